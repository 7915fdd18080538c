package io.github.stoplag;

import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAPackage;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideOutsideOfPackages;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;
import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.domain.JavaCodeUnit;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/** Holds the floors: a package imports only from packages below it, and the core only from what it may. */
class ArchitectureTest {
    private static final String ROOT = "io.github.stoplag";
    private static final List<String> FLOORS = List.of(
            "quantity",
            "source",
            "chance",
            "kernel",
            "road",
            "braking",
            "driver",
            "lamp",
            "approval",
            "circuit",
            "sight",
            "following",
            "sweep",
            "film",
            "worked");
    /** Functions of Math whose last bit is the processor's own. */
    private static final Set<String> ROUNDED = Set.of(
            "sin", "cos", "tan", "asin", "acos", "atan", "atan2", "exp", "expm1", "log", "log10", "log1p", "pow",
            "cbrt", "sinh", "cosh", "tanh", "hypot");

    private static final JavaClasses CORE = new ClassFileImporter()
            .withImportOption(new ImportOption.DoNotIncludeTests())
            .importPackages(ROOT);

    @TestFactory
    Stream<DynamicTest> eachFloorUsesOnlyFloorsBelow() {
        return IntStream.range(0, FLOORS.size() - 1).mapToObj(i -> {
            String[] above = FLOORS.subList(i + 1, FLOORS.size()).stream()
                    .map(floor -> ROOT + "." + floor + "..")
                    .toArray(String[]::new);
            return DynamicTest.dynamicTest(
                    FLOORS.get(i),
                    () -> noClasses()
                            .that()
                            .resideInAPackage(ROOT + "." + FLOORS.get(i) + "..")
                            .should()
                            .dependOnClassesThat()
                            .resideInAnyPackage(above)
                            .check(CORE));
        });
    }

    @Test
    void everyPackageHasAFloorAndEveryFloorIsAPackage() {
        assertThat(CORE.stream()
                        .map(type -> type.getPackageName().substring(ROOT.length() + 1))
                        .collect(Collectors.toSet()))
                .containsExactlyInAnyOrderElementsOf(FLOORS);
    }

    @Test
    void packagesHaveNoCycles() {
        slices().matching(ROOT + ".(*)..").should().beFreeOfCycles().check(CORE);
    }

    @Test
    void coreDependsOnTheJdkAndCommonsAlone() {
        noClasses()
                .that(resideInAPackage(ROOT + ".."))
                .should()
                .dependOnClassesThat(
                        resideOutsideOfPackages(ROOT + "..", "java..", "org.apache.commons..", "org.jspecify.."))
                .check(CORE);
    }

    @Test
    void coreKnowsNoQuantityInterfacesOfTheUnitsStandard() {
        noClasses()
                .should()
                .dependOnClassesThat()
                .resideInAnyPackage("javax.measure..", "tech.units..")
                .check(CORE);
    }

    @Test
    void kernelUsesNoOtherMathsThanTheJdk() {
        noClasses()
                .that()
                .resideInAPackage(ROOT + ".kernel..")
                .should()
                .dependOnClassesThat()
                .resideInAnyPackage("org.apache.commons..")
                .check(CORE);
    }

    /**
     * Math's functions may differ in the last bit from one processor to another; sqrt, floor, min and the like may not.
     */
    @Test
    void aSweepOfPairsCallsNoMathsThatAProcessorMayRoundItsOwnWay() {
        Set<JavaCodeUnit> kernel = kernelOfASweep();
        assertThat(kernel.stream().map(unit -> unit.getOwner().getSimpleName()).distinct())
                .contains("PairBatch", "GapKernel", "EarlyEvent", "StopColumns", "Phases")
                .doesNotContain("DragKernel", "FrictionKernel");
        assertThat(kernel.stream().flatMap(ArchitectureTest::roundedMaths)).isEmpty();
        assertThat(codeOfSweep()
                        // it rounds a figure for print
                        .filter(unit -> !unit.getOwner().getSimpleName().equals("Measurand"))
                        .flatMap(ArchitectureTest::roundedMaths))
                .isEmpty();
    }

    /** What a sweep calls of the kernel, and what that calls there in turn. */
    private static Set<JavaCodeUnit> kernelOfASweep() {
        Set<JavaCodeUnit> found = new HashSet<>();
        Deque<JavaCodeUnit> open = codeOfSweep().collect(Collectors.toCollection(ArrayDeque::new));
        while (!open.isEmpty()) {
            JavaCodeUnit unit = open.pop();
            Stream.of(unit.getCallsFromSelf(), unit.getCodeUnitReferencesFromSelf())
                    .flatMap(Set::stream)
                    .filter(access -> access.getTargetOwner().getPackageName().equals(ROOT + ".kernel"))
                    .flatMap(access -> access.getTarget().resolveMember().stream())
                    .map(JavaCodeUnit.class::cast)
                    .filter(found::add)
                    .forEach(open::push);
        }
        return found;
    }

    private static Stream<JavaCodeUnit> codeOfSweep() {
        return CORE.stream()
                .filter(type -> type.getPackageName().equals(ROOT + ".sweep"))
                .flatMap(type -> type.getCodeUnits().stream());
    }

    private static Stream<String> roundedMaths(JavaCodeUnit unit) {
        return unit.getMethodCallsFromSelf().stream()
                .filter(call -> call.getTargetOwner().isEquivalentTo(Math.class) && ROUNDED.contains(call.getName()))
                .map(call -> unit.getFullName() + " calls Math." + call.getName());
    }
}
