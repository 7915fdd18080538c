package io.github.stoplag;

import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** Every type and member that the glossary of DEVELOPERS.md names is there. */
class GlossaryTest {
    private static final Path GUIDE = Path.of("..", "DEVELOPERS.md");
    private static final Pattern NAME = Pattern.compile("`([A-Z][A-Za-z0-9]*(?:\\.[A-Za-z_][A-Za-z0-9_]*)*)`");
    private static final Map<String, JavaClass> CORE = new ClassFileImporter()
            .withImportOption(new ImportOption.DoNotIncludeTests()).importPackages("io.github.stoplag").stream()
                    .filter(type -> !type.getSimpleName().isEmpty())
                    .collect(Collectors.toMap(GlossaryTest::nested, type -> type, (a, b) -> a));

    private static String nested(JavaClass type) {
        return type.getName().substring(type.getPackageName().length() + 1).replace('$', '.');
    }

    private static boolean isThere(String name) {
        int dot = name.lastIndexOf('.');
        if (CORE.containsKey(name) || dot < 0) {
            return CORE.containsKey(name);
        }
        JavaClass type = CORE.get(name.substring(0, dot));
        String member = name.substring(dot + 1);
        return type != null
                && Stream.concat(type.getAllMethods().stream(), type.getAllFields().stream())
                        .anyMatch(found -> found.getName().equals(member));
    }

    @Test
    void everyIdentifierOfTheGlossaryExists() throws IOException {
        String text = Files.readString(GUIDE);
        String glossary = text.substring(text.indexOf("## Glossary"), text.indexOf("## Habits"));
        List<String> names = NAME.matcher(glossary)
                .results()
                .map(MatchResult::group)
                .map(name -> name.replace("`", ""))
                .toList();
        assertThat(names).hasSizeGreaterThan(80);
        assertThat(names).allSatisfy(name -> assertThat(isThere(name)).as(name).isTrue());
    }
}
