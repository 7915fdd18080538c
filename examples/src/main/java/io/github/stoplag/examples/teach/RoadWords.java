package io.github.stoplag.examples.teach;

import io.github.stoplag.quantity.Numbers;
import io.github.stoplag.road.Surface;
import io.github.stoplag.worked.Given;
import io.github.stoplag.worked.Unit;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;

/**
 * A road in the words of a question: {@code wet asphalt}, or the row name of a published surface such as
 * {@code asphalt-wet-sliding}.
 *
 * <p>The short words stand for rows of one table, so that dry and wet come from the same source. Of a range the low end
 * is taken, which gives the longest distance and the lowest speed from marks.
 *
 * @param surface the published surface
 * @param others the material by which other sources are compared, possibly empty
 */
record RoadWords(Surface surface, String others) {
    private record Named(String row, String material) {}

    private static final Map<String, Named> WORDS = rows();

    private static Map<String, Named> rows() {
        Map<String, Named> words = new LinkedHashMap<>();
        words.put("dry asphalt", new Named("asphaltic-concrete-dry-1994", "asphalt"));
        words.put("wet asphalt", new Named("asphaltic-concrete-wet-1994", "asphalt"));
        words.put("dry concrete", new Named("concrete-dry-1994", "concrete"));
        words.put("wet concrete", new Named("concrete-wet-1994", "concrete"));
        words.put("gravel", new Named("gravel-1994", "gravel"));
        words.put("wet grass", new Named("grass-wet-1994", "grass"));
        words.put("snow", new Named("snow-1994", "snow"));
        words.put("ice", new Named("ice-1994", "ice"));
        return words;
    }

    static Optional<RoadWords> of(String text) {
        Named named = WORDS.get(text);
        String row = named == null ? text : named.row;
        return Surface.published().stream()
                .filter(each -> each.id().equals(row))
                .findFirst()
                .map(each -> new RoadWords(each, named == null ? "" : named.material));
    }

    /** Lists the short words. */
    static List<String> words() {
        return List.copyOf(WORDS.keySet());
    }

    Given friction() {
        return Given.of(
                surface.low().inRatio(),
                Unit.NONE,
                title() + ": "
                        + surface.source().document() + ", "
                        + surface.source().place() + ", "
                        + surface.source().standing());
    }

    /** What the friction takes for granted. */
    List<String> assumptions() {
        List<String> lines = new ArrayList<>();
        boolean range = surface.low().compareTo(surface.high()) < 0;
        lines.add("the friction is "
                + (range
                        ? "the low end of the published range " + surface.low() + " to " + surface.high()
                        : "the single figure " + surface.low() + " of one source")
                + "; measure the road in question where it matters");
        switch (surface.kind()) {
            case PEAK -> lines.add("the figure is a peak, as anti-lock brakes seek it; locked wheels find less");
            case SLIDING -> lines.add("the figure is for locked, sliding wheels");
            case UNSTATED -> lines.add("the source does not say whether the figure is for locked or turning wheels");
        }
        spread().ifPresent(lines::add);
        return lines;
    }

    private Optional<String> spread() {
        List<Surface> like = Surface.published(surface.condition()).stream()
                .filter(each -> !others.isEmpty() && each.material().contains(others))
                .toList();
        if (like.size() < 2) {
            return Optional.empty();
        }
        double low =
                like.stream().mapToDouble(each -> each.low().inRatio()).min().orElseThrow();
        double high =
                like.stream().mapToDouble(each -> each.high().inRatio()).max().orElseThrow();
        String sources = like.stream()
                .map(each -> each.source().document())
                .distinct()
                .map(each -> each.replaceFirst(",.*", ""))
                .collect(Collectors.joining(", "));
        return Optional.of("published figures for " + others + " in this condition go from " + Numbers.text(low)
                + " to " + Numbers.text(high) + " (" + sources + ")");
    }

    private String title() {
        String condition = surface.condition().name().toLowerCase(Locale.ROOT);
        return surface.material().contains(condition) ? surface.material() : surface.material() + ", " + condition;
    }
}
