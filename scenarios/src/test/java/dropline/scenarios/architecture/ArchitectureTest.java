package dropline.scenarios.architecture;

import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAnyPackage;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.fields;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noFields;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.tngtech.archunit.base.DescribedPredicate;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.domain.JavaModifier;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import java.util.HashMap;
import java.util.HashSet;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.concurrent.ConcurrentHashMap;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

final class ArchitectureTest {
    private static final String PROTOCOL = "dropline.protocol..";
    private static final String BUS = "dropline.bus..";
    private static final String HARNESS = "dropline.harness..";
    private static final String SCENARIOS = "dropline.scenarios..";

    private static JavaClasses classes;

    @BeforeAll
    static void readClasses() {
        classes = new ClassFileImporter()
                .withImportOption(ImportOption.Predefined.DO_NOT_INCLUDE_TESTS)
                .importPackages("dropline");
    }

    @ParameterizedTest
    @ValueSource(strings = {"dropline.protocol", "dropline.bus", "dropline.harness"})
    void everyModuleWasRead(String root) {
        long found = classes.stream()
                .filter(type -> type.getPackageName().startsWith(root))
                .count();

        assertTrue(found > 10, () -> "more than 10 classes must be read of " + root + ": found=" + found);
    }

    @Test
    void protocolDependsOnNoOtherModule() {
        noClasses()
                .that()
                .resideInAPackage(PROTOCOL)
                .should()
                .dependOnClassesThat()
                .resideInAnyPackage(BUS, HARNESS, SCENARIOS)
                .check(classes);
    }

    @Test
    void protocolDependsOnNothingButTheLanguageAndAnnotations() {
        noClasses()
                .that()
                .resideInAPackage(PROTOCOL)
                .should()
                .dependOnClassesThat()
                .resideOutsideOfPackages(PROTOCOL, "java.lang..", "java.util..", "org.jspecify..", "")
                .check(classes);
    }

    @Test
    void busDependsOnlyOnProtocol() {
        noClasses()
                .that()
                .resideInAPackage(BUS)
                .should()
                .dependOnClassesThat()
                .resideInAnyPackage(HARNESS, SCENARIOS)
                .check(classes);
    }

    @Test
    void harnessDoesNotKnowTheScenarios() {
        noClasses()
                .that()
                .resideInAPackage(HARNESS)
                .should()
                .dependOnClassesThat()
                .resideInAPackage(SCENARIOS)
                .check(classes);
    }

    @Test
    void findingsCannotReachWhatInjectsFaults() {
        noClasses()
                .that()
                .resideInAPackage("dropline.harness.finding..")
                .should()
                .transitivelyDependOnClassesThat()
                .resideInAnyPackage("dropline.bus.fault..", "dropline.harness.fault..")
                .check(classes);
    }

    @Test
    void noPackagesFormACycle() {
        slices().matching("dropline.(**)").should().beFreeOfCycles().check(classes);
    }

    @Test
    void simulationNeitherReadsTheClockNorStartsThreadsNorTouchesFiles() {
        noClasses()
                .that()
                .resideInAnyPackage(PROTOCOL, BUS)
                .should()
                .dependOnClassesThat(resideInAnyPackage(
                                "java.io..", "java.nio.file..", "java.nio.channels..", "java.net..")
                        .or(resideInAnyPackage("java.util.concurrent..", "java.util.logging.."))
                        .or(oneOf(Thread.class, ThreadLocal.class, java.time.Clock.class, java.util.Random.class)))
                .check(classes);
    }

    @Test
    void simulationCallsNoClock() {
        noClasses()
                .that()
                .resideInAnyPackage(PROTOCOL, BUS)
                .should()
                .callMethod(System.class, "nanoTime")
                .orShould()
                .callMethod(System.class, "currentTimeMillis")
                .orShould()
                .callMethod(java.time.Instant.class, "now")
                .orShould()
                .callMethod(Math.class, "random")
                .check(classes);
    }

    @Test
    void simulationUsesNoHashOrder() {
        noClasses()
                .that()
                .resideInAnyPackage(PROTOCOL, BUS)
                .should()
                .dependOnClassesThat(
                        oneOf(HashMap.class, HashSet.class, IdentityHashMap.class, ConcurrentHashMap.class))
                .orShould()
                .callMethodWhere(new ImmutableHashOrder())
                .check(classes);
    }

    @Test
    void recordsHoldNoArrays() {
        noFields()
                .that()
                .areDeclaredInClassesThat(DescribedPredicate.describe("are records", JavaClass::isRecord))
                .and()
                .areNotStatic()
                .should()
                .haveRawType(DescribedPredicate.describe("an array", JavaClass::isArray))
                .check(classes);
    }

    @Test
    void staticFieldsAreFinal() {
        fields().that().areStatic().should().beFinal().check(classes);
    }

    @Test
    void staticFieldsHoldNoMutableCollections() {
        noFields()
                .that()
                .areStatic()
                .and(DescribedPredicate.describe(
                        "are written by people", field -> !field.getModifiers().contains(JavaModifier.SYNTHETIC)))
                .should()
                .haveRawType(oneOf(
                        java.util.ArrayList.class,
                        java.util.LinkedHashMap.class,
                        java.util.TreeMap.class,
                        HashMap.class,
                        StringBuilder.class))
                .check(classes);
    }

    @Test
    void onlyTheCommandLinePrints() {
        noClasses()
                .that()
                .resideOutsideOfPackage("dropline.harness.cli..")
                .should()
                .accessField(System.class, "out")
                .orShould()
                .accessField(System.class, "err")
                .check(classes);
    }

    @Test
    void onlyTheCommandLineEndsTheProcess() {
        noClasses()
                .that()
                .resideOutsideOfPackage("dropline.harness.cli..")
                .should()
                .callMethod(System.class, "exit", int.class)
                .check(classes);
    }

    private static DescribedPredicate<JavaClass> oneOf(Class<?>... types) {
        List<String> names = Stream.of(types).map(Class::getName).toList();
        return DescribedPredicate.describe("one of " + names, type -> names.contains(type.getName()));
    }
}
