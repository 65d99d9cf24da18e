package dropline.harness.plan;

import dropline.harness.size.Tight;
import org.jspecify.annotations.Nullable;

/**
 * A group with settings under which it passed.
 *
 * @param healthy what came nearest its limit with every board alive; null where nothing moved
 * @param dead the same with any one board dead
 */
record Fit(
        Group group,
        Settings settings,
        @Nullable Tight healthy,
        @Nullable Tight dead) {}
