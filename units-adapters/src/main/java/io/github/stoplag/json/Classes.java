package io.github.stoplag.json;

import io.github.stoplag.braking.BrakeResponse;
import io.github.stoplag.braking.Stop;
import io.github.stoplag.following.BrakingVehicle;
import io.github.stoplag.following.PairOutcome;
import io.github.stoplag.quantity.Deceleration;
import io.github.stoplag.quantity.Distance;
import io.github.stoplag.quantity.Speed;
import io.github.stoplag.quantity.TimeSpan;
import io.github.stoplag.source.Evident;
import java.lang.reflect.Method;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** The shapes of the classes that are no records: the methods that give their parts, and what makes them again. */
final class Classes {
    /**
     * A class by its parts.
     *
     * @param parts the methods that give them
     * @param maker what makes it of them, in this order
     */
    private record ByParts(List<String> parts, Maker maker) {}

    private static final Map<Class<?>, ByParts> BY_CLASS = Map.of(
            BrakeResponse.class,
            new ByParts(List.of("deadTime", "buildUp"), p -> new BrakeResponse((TimeSpan) p[0], (TimeSpan) p[1])),
            BrakingVehicle.class,
            new ByParts(
                    List.of("speed", "reaction", "response", "deceleration"),
                    p -> BrakingVehicle.of((Speed) p[0], (TimeSpan) p[1], (BrakeResponse) p[2], (Deceleration) p[3])),
            PairOutcome.Contact.class,
            new ByParts(
                    List.of("at", "closingSpeed", "leaderSpeed", "followerSpeed", "leaderStanding"),
                    p -> PairOutcome.Contact.of(
                            (TimeSpan) p[0], (Speed) p[1], (Speed) p[2], (Speed) p[3], (boolean) p[4])),
            PairOutcome.NoContact.class,
            new ByParts(
                    List.of("smallestGap", "at", "grazing"),
                    p -> PairOutcome.NoContact.of((Distance) p[0], (TimeSpan) p[1], (boolean) p[2])),
            Stop.class,
            new ByParts(List.of("speed", "reaction", "response", "deceleration", "origin"), Classes::stop));

    private Classes() {}

    static boolean covers(Class<?> type) {
        return BY_CLASS.containsKey(type);
    }

    static Shape shape(Class<?> type) {
        ByParts form = BY_CLASS.get(type);
        if (form == null) {
            throw new NoForm(type.getSimpleName() + " has no form in JSON");
        }
        return new ObjectShape(
                type,
                Shapes.kind(type),
                () -> form.parts().stream().map(name -> part(type, name)).toList(),
                form.maker());
    }

    private static Part part(Class<?> type, String name) {
        Method getter = Arrays.stream(type.getMethods())
                .filter(method -> method.getName().equals(name) && method.getParameterCount() == 0)
                .findFirst()
                .orElseThrow();
        return Part.of(name, Shapes.of(getter.getGenericReturnType()), value -> Maker.get(getter, value));
    }

    private static Object stop(Object[] p) {
        Evident origin = ((Optional<?>) p[4]).map(Evident.class::cast).orElse(null);
        return Stop.of((Speed) p[0], (TimeSpan) p[1], (BrakeResponse) p[2], (Deceleration) p[3], origin)
                .orElseThrow();
    }
}
