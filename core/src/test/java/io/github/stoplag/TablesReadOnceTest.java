package io.github.stoplag;

import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.domain.JavaCodeUnit;
import com.tngtech.archunit.core.domain.JavaMethodCall;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import io.github.stoplag.source.Catalogue;
import io.github.stoplag.source.Table;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;

/** A table is read when its class is loaded and never again: no look-up, and no evidence, costs a file. */
class TablesReadOnceTest {
    private static final JavaClasses CORE = new ClassFileImporter()
            .withImportOption(new ImportOption.DoNotIncludeTests())
            .importPackages("io.github.stoplag");

    @Test
    void tablesAreReadByStaticInitialisersAlone() {
        Set<String> late = new TreeSet<>();
        List<JavaMethodCall> reads = CORE.stream()
                .filter(type -> !type.isEquivalentTo(Catalogue.class))
                .flatMap(type -> type.getMethodCallsFromSelf().stream())
                .filter(call -> call.getName().startsWith("read")
                        && (call.getTargetOwner().isEquivalentTo(Table.class)
                                || call.getTargetOwner().isEquivalentTo(Catalogue.class)))
                .toList();
        assertThat(reads).hasSizeGreaterThan(25);
        reads.forEach(call -> collectLate(call.getOrigin(), new HashSet<>(), late));
        assertThat(late).as("ways to read a table after its class is loaded").isEmpty();
    }

    /** Walks from caller to caller; a way that ends elsewhere than in a static initialiser is late. */
    private static void collectLate(JavaCodeUnit unit, Set<JavaCodeUnit> seen, Set<String> late) {
        if (!seen.add(unit) || unit.getName().equals("<clinit>")) {
            return;
        }
        Set<JavaCodeUnit> callers = new HashSet<>();
        unit.getAccessesToSelf().forEach(access -> callers.add(access.getOrigin()));
        if (callers.isEmpty()) {
            late.add(unit.getFullName());
        }
        callers.forEach(caller -> collectLate(caller, seen, late));
    }
}
