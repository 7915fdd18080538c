package io.github.stoplag.examples.sweep.run;

import io.github.stoplag.examples.Spelled;
import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class AxisKindTest {
    static List<AxisKind> kinds() {
        return AxisKind.all(List.of("bulb"));
    }

    @ParameterizedTest
    @MethodSource("kinds")
    void planReadsEverySpelling(AxisKind kind) {
        Spelled.readBy(kind.key());
    }
}
