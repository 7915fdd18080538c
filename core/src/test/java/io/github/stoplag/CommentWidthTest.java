package io.github.stoplag;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** Comments stay within the width the formatter gives to code; it does not look at them. */
class CommentWidthTest {
    private static final int WIDTH = 120;
    private static final Path ROOT = Path.of("..");

    @Test
    void noCommentIsWiderThanTheCode() throws IOException {
        List<String> wide = new ArrayList<>();
        int files = 0;
        for (String module : List.of("core", "units-adapters", "examples", "benchmarks")) {
            try (Stream<Path> paths = Files.walk(ROOT.resolve(module).resolve("src"))) {
                for (Path file :
                        paths.filter(path -> path.toString().endsWith(".java")).toList()) {
                    files++;
                    List<String> lines = Files.readAllLines(file);
                    for (int i = 0; i < lines.size(); i++) {
                        String line = lines.get(i);
                        if (line.length() > WIDTH && line.strip().matches("(\\*|//|/\\*).*")) {
                            wide.add(file.getFileName() + ":" + (i + 1));
                        }
                    }
                }
            }
        }
        assertThat(files).isGreaterThan(500);
        assertThat(wide).isEmpty();
    }
}
