package io.github.stoplag;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.stoplag.quantity.Check;
import io.github.stoplag.quantity.Speed;
import io.github.stoplag.source.Table;
import io.github.stoplag.units.Quantities;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;

/** What is the published face of the library, and that its internal tools stay out of it. */
class PublicApiTest {
    private static final List<Path> GUIDES = List.of(Path.of("..", "README.md"), Path.of("..", "core", "CHANGES.md"));

    @Test
    void someTypesAreInternal() {
        assertThat(PublicApi.types()).contains(Speed.class, Quantities.class).doesNotContain(Check.class, Table.class);
        assertThat(internal()).hasSizeBetween(3, 8);
    }

    @Test
    void noMemberOfTheFaceShowsAnInternalType() {
        Pattern names = Pattern.compile("\\b(" + String.join("|", internal()) + ")\\b");
        Set<String> shown = new TreeSet<>();
        for (String line : PublicApi.lines()) {
            if (names.matcher(line.substring(line.indexOf('(') + 1)).find()) {
                shown.add(line);
            }
        }
        assertThat(shown).isEmpty();
    }

    @Test
    void guidesForUsersNameNoInternalType() throws IOException {
        Pattern names = Pattern.compile("`(" + String.join("|", internal()) + ")\\b");
        for (Path guide : GUIDES) {
            assertThat(names.matcher(Files.readString(guide)).results().map(found -> found.group()))
                    .as(guide.toString())
                    .isEmpty();
        }
    }

    private static Set<String> internal() {
        return PublicApi.publicTypes().stream()
                .filter(PublicApi::isInternal)
                .map(Class::getSimpleName)
                .collect(Collectors.toCollection(TreeSet::new));
    }
}
