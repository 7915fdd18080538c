package io.github.stoplag.examples;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;
import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/** Holds the floors of the programs: what they share lies below them, and no program imports another. */
class ExamplesArchitectureTest {
    private static final String ROOT = "io.github.stoplag.examples";
    private static final List<String> SHARED = List.of("file", "draw", "program", "lamps");
    private static final List<String> PROGRAMS =
            List.of("lampswap", "circuit", "following", "onset", "rules", "teach", "film", "sweep.run", "sweep");
    private static final String SHOW = "gallery";

    /** From the ground up; on top lies {@link Main}. */
    private static final List<String> FLOORS =
            Stream.of(SHARED, PROGRAMS, List.of(SHOW)).flatMap(List::stream).toList();

    private static final JavaClasses EXAMPLES = new ClassFileImporter()
            .withImportOption(new ImportOption.DoNotIncludeTests())
            .importPackages(ROOT);

    @TestFactory
    Stream<DynamicTest> eachFloorUsesOnlyFloorsBelow() {
        return IntStream.range(0, FLOORS.size())
                .mapToObj(i -> forbidden(FLOORS.get(i), FLOORS.subList(i + 1, FLOORS.size())));
    }

    /** The program of a sweep and its runs, which the cluster's job shares, are one program in two rooms. */
    @TestFactory
    Stream<DynamicTest> programsDoNotUseEachOther() {
        return PROGRAMS.stream()
                .map(program -> forbidden(
                        program,
                        PROGRAMS.stream()
                                .filter(other -> !other.equals(program) && !(program + ".run").equals(other))
                                .toList()));
    }

    /** A room may be named before it opens. */
    private static DynamicTest forbidden(String floor, List<String> others) {
        List<String> packages = new ArrayList<>(List.of(ROOT));
        others.forEach(other -> packages.add(ROOT + "." + other));
        return DynamicTest.dynamicTest(
                floor,
                () -> noClasses()
                        .that()
                        .resideInAPackage(ROOT + "." + floor)
                        .should()
                        .dependOnClassesThat()
                        .resideInAnyPackage(packages.toArray(String[]::new))
                        .allowEmptyShould(true)
                        .check(EXAMPLES));
    }

    @Test
    void everyPackageHasAFloor() {
        assertThat(EXAMPLES.stream()
                        .filter(type -> !type.getPackageName().equals(ROOT))
                        .map(type -> type.getPackageName().substring(ROOT.length() + 1))
                        .collect(Collectors.toSet()))
                .isSubsetOf(FLOORS)
                .contains("file", "draw", "lampswap", "sweep.run", "sweep", "gallery");
    }

    @Test
    void onlyTheListOfProgramsLiesOnTop() {
        assertThat(EXAMPLES.stream()
                        .filter(type -> type.getPackageName().equals(ROOT))
                        .map(type -> type.getSimpleName())
                        .filter(name -> !name.equals("package-info")))
                .containsExactly("Main");
    }

    @Test
    void packagesHaveNoCycles() {
        slices().matching(ROOT + ".(**)").should().beFreeOfCycles().check(EXAMPLES);
    }
}
