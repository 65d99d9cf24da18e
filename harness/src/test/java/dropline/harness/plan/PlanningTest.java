package dropline.harness.plan;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dropline.bus.pit.Controller.StateDelivery;
import dropline.harness.json.PlanJson;
import dropline.harness.pitfile.PitFile;
import java.io.IOException;
import java.io.StringWriter;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

final class PlanningTest {
    private static final String TIGHT = PitOfBoards.TIGHT;

    private static PitOfBoards four() {
        return new PitOfBoards()
                .segment("bus")
                .board("bus", "left", TIGHT, "")
                .board("bus", "right", TIGHT, "")
                .board("bus", "left", TIGHT, "")
                .board("bus", "right", TIGHT, "");
    }

    @Test
    void aSegmentThatIsTooFullIsSharedOutByPlaces() throws IOException {
        Planned planned = PitOfBoards.planned(four().text());

        assertEquals(
                List.of(List.of("board 1", "board 3"), List.of("board 2", "board 4")), PitOfBoards.boards(planned));
        PlanResult result = planned.result();
        assertTrue(result.passes() && result.exact());
        assertEquals(List.of(), result.splits());
        assertEquals("bus 2", result.segments().get(1).name());
        assertEquals(
                List.of("board 2", "board 4"),
                result.moves().stream().map(PlanResult.Move::node).toList());
    }

    @Test
    void widerLimitsNeedNoPlanAndNothingMoves() throws IOException {
        Planned planned = PitOfBoards.planned(four().text().replace(TIGHT, "400 ms"));

        assertEquals(1, planned.result().segments().size());
        assertEquals(List.of(), planned.result().moves());
        assertTrue(planned.result().sentences().contains("The pit can stay as it is."));
    }

    @Test
    void segmentsThatAreNotNeededAreDroppedUnlessTheyAreToStay() throws IOException {
        String text = new PitOfBoards()
                .segment("one")
                .segment("two")
                .board("one", "left", "400 ms", "")
                .board("two", "left", "400 ms", "")
                .text();

        assertEquals(List.of("two"), PitOfBoards.planned(text).result().dropped());
        PlanResult same = PitOfBoards.planned(text, true, 2).result();
        assertEquals(List.of(), same.dropped());
        assertEquals(2, same.segments().size());
    }

    @Test
    void aPlaceIsSplitOnlyWhereItIsTooMuchForOneSegmentAndThatIsSaid() throws IOException {
        String text = new PitOfBoards()
                .segment("bus")
                .board("bus", "left", TIGHT, "")
                .board("bus", "left", TIGHT, "")
                .board("bus", "left", TIGHT, "")
                .text();

        PlanResult result = PitOfBoards.planned(text).result();

        assertEquals(1, result.splits().size());
        assertEquals("left", result.splits().get(0).place());
        assertTrue(result.splits().get(0).alike());
        assertFalse(result.splits().get(0).fitsOne());
    }

    @Test
    void aPanelThatNoSegmentHelpsIsNamedAndTheOthersArePlanned() throws IOException {
        String slow = ", delay: 300 ms";
        String text = new PitOfBoards()
                .segment("bus")
                .board("bus", "left", "200 ms", slow)
                .board("bus", "left", "200 ms", "")
                .text();

        PlanResult result = PitOfBoards.planned(text).result();

        assertEquals(
                List.of("panel 1"),
                result.hopeless().stream().map(one -> one.name()).toList());
        assertTrue(result.offered());
        assertFalse(result.passes());
        assertTrue(result.sentences().stream().anyMatch(sentence -> sentence.startsWith("No plan helps panel 1")));
    }

    @Test
    void tooFewSegmentsThatMustStayLeaveNoPlan() throws IOException {
        Planned planned = PitOfBoards.planned(four().text(), true, 2);

        assertFalse(planned.result().offered());
        assertNull(planned.pit());
        assertEquals("", planned.result().digest());
        assertTrue(planned.result().sentences().get(0).startsWith("No plan was found that passes"));
    }

    @Test
    void theWrittenFileIsUnderstoodAndPlaysAsThePlanDoes() throws IOException {
        String text = four().text();
        PitFile.Understood before = PitOfBoards.understood(text);
        Planned planned = PitOfBoards.planned(text);

        String written = PlanFile.of(planned, before.pit(), "pit.yaml", text);

        PitFile.Understood after = PitOfBoards.understood(written);
        assertEquals(
                planned.result().digest(),
                Planning.digest(before.pit(), after.pit(), PitOfBoards.load(before.pit()), 1, 1));
        assertEquals(
                PitOfBoards.boards(planned),
                after.pit().segments().stream()
                        .map(segment -> segment.nodes().stream()
                                .map(node -> node.name())
                                .toList())
                        .toList());
        assertTrue(written.contains("# number 4") && written.contains("# the pair called bus"));
        assertTrue(written.contains("board 2: {segment: bus 2, address: 2, profile: plain}  # number 2"), written);
    }

    @Test
    void whatComesOutDoesNotHangOnTheNumberOfThreads() throws IOException {
        String text = four().board("bus", "middle", TIGHT, "").text();

        assertEquals(json(PitOfBoards.planned(text, false, 1)), json(PitOfBoards.planned(text, false, 3)));
    }

    private static String json(Planned planned) throws IOException {
        StringWriter json = new StringWriter();
        PlanJson.write(planned.result(), json);
        return json.toString();
    }

    @Test
    void whatIsToBuyCountsPlannedBoardsAndFurtherSegments() throws IOException {
        String text = four().text().replaceFirst("place: right\n", "place: right\n    status: planned\n");

        PlanResult result = PitOfBoards.planned(text).result();

        ShoppingList list = result.toBuy();
        assertNotNull(list);
        assertEquals(1, list.boards().get(0).count());
        // one for the planned board, one for the controller of the further segment
        assertEquals(2, list.transceivers().get(0).count());
        assertEquals(2, list.ports().get(0).used());
        assertEquals(
                2,
                list.cable().stream()
                        .mapToInt(ShoppingList.PairLength::unknown)
                        .filter(n -> n > 0)
                        .count());
    }

    @Test
    void aTighterLimitIsAskedSoManyTimesMoreOften() {
        PitFile.Understood understood = PitOfBoards.understood(new PitOfBoards()
                .segment("bus")
                .board("bus", "left", "110 ms", "")
                .board("bus", "left", "500 ms", "")
                .board("bus", "left", "250 ms", "")
                .text());
        List<Board> boards =
                Family.of(understood.pit(), understood.nodes()).get(0).boards();

        Settings byLimit = new Settings(9600, StateDelivery.ADDRESSED, Settings.Polling.BY_LIMIT);

        assertEquals(Map.of(0, 5, 1, 1, 2, 2), Weights.of(boards, byLimit));
    }
}
