package io.github.stoplag;

import static com.tngtech.archunit.core.domain.JavaCall.Predicates.target;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAPackage;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideOutsideOfPackages;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.type;
import static com.tngtech.archunit.core.domain.properties.HasName.Predicates.nameMatching;
import static com.tngtech.archunit.core.domain.properties.HasOwner.Predicates.With.owner;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;
import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import java.util.List;
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
            "kernel",
            "road",
            "braking",
            "driver",
            "lamp",
            "circuit",
            "sight",
            "following",
            "sweep",
            "film",
            "worked");
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
                            .allowEmptyShould(true)
                            .check(CORE));
        });
    }

    @Test
    void everyPackageHasAFloor() {
        assertThat(CORE.stream()
                        .map(type -> type.getPackageName().substring(ROOT.length() + 1))
                        .collect(Collectors.toSet()))
                .isSubsetOf(FLOORS)
                .contains("quantity", "kernel", "braking", "following");
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

    /** Math's functions may differ in the last bit from one processor to another; sqrt, floor, min and the like may not. */
    @Test
    void aSweepOfPairsCallsNoMathsThatAProcessorMayRoundItsOwnWay() {
        noClasses()
                .that()
                .resideInAPackage(ROOT + ".sweep..")
                .or()
                .haveNameMatching(ROOT + ".kernel.(PairBatch|GapKernel|CaseTheorem|RelativeMotion|Phases|GapEvent).*")
                // it rounds a figure for print
                .and()
                .doNotHaveSimpleName("Measurand")
                .should()
                .callMethodWhere(target(owner(type(Math.class)))
                        .and(target(nameMatching("sin|cos|tan|asin|acos|atan|atan2|exp|expm1|log|log10|log1p|pow|cbrt"
                                + "|sinh|cosh|tanh|hypot"))))
                .check(CORE);
    }
}
