package io.github.stoplag.examples.lamps;

import io.github.stoplag.quantity.LuminousIntensity;
import io.github.stoplag.quantity.TimeSpan;
import io.github.stoplag.sight.LampSet;
import io.github.stoplag.sight.LampSignal;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;

/** Several lamps that a file describes as one. */
final class SetInput {
    /** Far enough for no eye to merge two lamps at any distance at which a stop lamp matters. */
    private static final double APART_M = 0.5;

    private SetInput() {}

    /**
     * A lamp of a set.
     *
     * @param name what it is called in reports
     * @param input the lamp
     * @param after by how much its circuit closes later
     */
    record Part(String name, LampInput input, TimeSpan after) {
        LampSet.Member member(LampInput.Light light, double lateralM) {
            return LampSet.Member.of(name, LampSignal.of(light.onset(), light.intensity()))
                    .after(after)
                    .at(lateralM, 1);
        }
    }

    /** Several lamps that signal together, too far apart to merge. */
    static LampInput of(List<Part> parts, String key) {
        LuminousIntensity sum = LuminousIntensity.candela(parts.stream()
                .mapToDouble(part -> part.input().given().inCandela())
                .sum());
        boolean follows = parts.stream().anyMatch(part -> part.input().followsSupply());
        return new LampInput(key, sum, Optional.empty(), follows, supply -> {
            List<LampInput.Light> lights = parts.stream()
                    .map(part -> part.input().switchedOn().apply(supply))
                    .toList();
            LampSet set = LampSet.of(IntStream.range(0, parts.size())
                    .mapToObj(i -> parts.get(i).member(lights.get(i), APART_M * (i - (parts.size() - 1) / 2.0)))
                    .toList());
            boolean known = lights.stream().noneMatch(light -> light.falls().isEmpty());
            return new LampInput.Light(
                    set.merged().onset(),
                    set.merged().finalIntensity(),
                    known
                            ? lights.stream()
                                    .flatMap(light -> light.falls().stream())
                                    .toList()
                            : List.of(),
                    Optional.empty(),
                    Optional.of(set),
                    IntStream.range(0, parts.size())
                            .boxed()
                            .flatMap(i -> lights.get(i).notes().stream()
                                    .map(note -> parts.get(i).name() + ": " + note))
                            .distinct()
                            .toList());
        });
    }
}
