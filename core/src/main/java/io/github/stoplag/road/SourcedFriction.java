package io.github.stoplag.road;

import io.github.stoplag.quantity.Check;
import io.github.stoplag.quantity.FrictionCoefficient;
import io.github.stoplag.source.Caveat;
import io.github.stoplag.source.Evidence;
import io.github.stoplag.source.Evident;
import io.github.stoplag.source.Source;
import java.util.List;
import java.util.Objects;

/**
 * A friction coefficient with what it rests on.
 *
 * @param friction the friction coefficient μ
 * @param source the model or table it comes from
 * @param caveats the reservations, empty if there are none
 */
public record SourcedFriction(FrictionCoefficient friction, Source source, List<Caveat> caveats) implements Evident {
    /**
     * Copies the caveats.
     *
     * @param friction the friction coefficient μ
     * @param source the model or table it comes from
     * @param caveats the reservations, empty if there are none
     */
    public SourcedFriction {
        Objects.requireNonNull(friction, "friction");
        Objects.requireNonNull(source, "source");
        caveats = Check.copyOf("caveats", caveats);
    }

    @Override
    public Evidence evidence() {
        return Evidence.of("friction coefficient " + friction, source).withCaveats(caveats);
    }
}
