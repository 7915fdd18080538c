package io.github.stoplag.examples.film;

import io.github.stoplag.film.GreySeries;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What a film shows of one lamp.
 *
 * @param name the lamp's name
 * @param region where it is in the picture; null for a table of grey values
 * @param series the grey value of each frame
 * @param caveats what to keep in mind
 */
record LampSeries(String name, @Nullable LampRegion region, GreySeries series, List<String> caveats) {}
