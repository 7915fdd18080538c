package io.github.stoplag.json;

import io.github.stoplag.braking.BrakeResponse;
import io.github.stoplag.braking.Stop;
import io.github.stoplag.following.BrakingVehicle;
import io.github.stoplag.following.PairOutcome;
import io.github.stoplag.quantity.Deceleration;
import io.github.stoplag.quantity.Distance;
import io.github.stoplag.quantity.Speed;
import io.github.stoplag.quantity.TimeSpan;
import io.github.stoplag.source.Evidence;
import io.github.stoplag.source.Evident;
import io.github.stoplag.worked.Amount;
import io.github.stoplag.worked.Given;
import io.github.stoplag.worked.Unit;
import java.lang.reflect.Constructor;
import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.ParameterizedType;
import java.lang.reflect.RecordComponent;
import java.lang.reflect.Type;
import java.math.BigDecimal;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.stream.IntStream;

/** Draws values of any type that has a form, as its constructor lets them pass. */
final class Samples {
    private static final int TRIES = 3000;
    private static final double[] SCALES = {0, 1e-3, 0.1, 1, 1, 1, 5, 30, 300, 3000};

    private final Random random;
    private int depth;

    Samples(long seed) {
        random = new Random(seed);
    }

    Object of(Type type) {
        if (type instanceof ParameterizedType made) {
            Type element = made.getActualTypeArguments()[0];
            if (made.getRawType() == List.class) {
                int most = depth > 3 ? 1 : 3;
                return IntStream.range(0, random.nextInt(most + 1))
                        .mapToObj(i -> of(element))
                        .toList();
            }
            return random.nextBoolean() ? Optional.empty() : Optional.of(of(element));
        }
        Class<?> simple = (Class<?>) type;
        if (simple == double.class || simple == Double.class) {
            return SCALES[random.nextInt(SCALES.length)] * random.nextDouble();
        } else if (simple == int.class || simple == Integer.class) {
            return random.nextInt(7);
        } else if (simple == long.class || simple == Long.class) {
            return random.nextLong() >>> (1 + random.nextInt(60));
        } else if (simple == boolean.class) {
            return random.nextBoolean();
        } else if (simple == String.class) {
            return "text \"µ²\" " + random.nextInt(1000);
        } else if (simple == BigDecimal.class) {
            return new BigDecimal(random.nextInt(100000)).scaleByPowerOfTen(-random.nextInt(6));
        } else if (simple == OptionalDouble.class) {
            return random.nextBoolean() ? OptionalDouble.empty() : OptionalDouble.of(random.nextDouble());
        } else if (simple == Unit.class) {
            return List.of(Unit.MPS, Unit.METRE, Unit.NONE, Unit.PERCENT).get(random.nextInt(4));
        } else if (simple == Evident.class) {
            return new Holders.Origin.Read((Evidence) of(Evidence.class));
        } else if (simple.isEnum()) {
            Object[] all = simple.getEnumConstants();
            return all[random.nextInt(all.length)];
        } else if (simple.isSealed()) {
            return member(simple);
        }
        return object(simple);
    }

    private Object member(Class<?> family) {
        List<Class<?>> members = Arrays.stream(family.getPermittedSubclasses())
                .filter(Samples::hasForm)
                .toList();
        // what holds more of its own family ends somewhere
        List<Class<?>> flat = depth < 4
                ? members
                : members.stream().filter(each -> !holds(each, family)).toList();
        return of(flat.get(random.nextInt(flat.size())));
    }

    private static boolean holds(Class<?> member, Class<?> family) {
        return member.isRecord()
                && Arrays.stream(member.getRecordComponents())
                        .anyMatch(part -> part.getGenericType().getTypeName().contains(family.getName()));
    }

    static boolean hasForm(Class<?> type) {
        try {
            Shapes.of(type).check();
            // a family has a form if a member has
            return !type.isInterface()
                    || Arrays.stream(type.getPermittedSubclasses()).anyMatch(Samples::hasForm);
        } catch (NoForm e) {
            return false;
        }
    }

    private Object object(Class<?> type) {
        depth++;
        try {
            RuntimeException last = new IllegalStateException("never tried");
            for (int i = 0; i < TRIES; i++) {
                try {
                    return type.isRecord() ? record(type) : madeByHand(type);
                } catch (IllegalArgumentException | ArithmeticException e) {
                    last = e;
                }
            }
            throw new IllegalStateException("no " + type.getName() + " can be drawn: " + last.getMessage(), last);
        } finally {
            depth--;
        }
    }

    private Object record(Class<?> type) {
        RecordComponent[] parts = type.getRecordComponents();
        try {
            Constructor<?> constructor = type.getConstructor(
                    Arrays.stream(parts).map(RecordComponent::getType).toArray(Class<?>[]::new));
            return constructor.newInstance(Arrays.stream(parts)
                    .map(part -> part.getType() == Given.class ? given(part.getName()) : of(part.getGenericType()))
                    .toArray());
        } catch (InvocationTargetException e) {
            throw new IllegalArgumentException(e.getCause());
        } catch (ReflectiveOperationException e) {
            throw new IllegalStateException(e);
        }
    }

    /** A number given in words of the unit its place asks for. */
    private Given given(String name) {
        Unit unit = Unit.NONE;
        if (name.toLowerCase(Locale.ROOT).contains("speed")) {
            unit = Unit.MPS;
        } else if (name.matches(".*([dD]eceleration|gravity)")) {
            unit = Unit.of("m/s²");
        } else if (name.matches(".*([rR]eaction|[dD]elay|Latency)")) {
            unit = Unit.SECOND;
        } else if (name.equals("gap")) {
            unit = Unit.METRE;
        }
        return new Given(new Amount(BigDecimal.valueOf(1 + random.nextInt(100), 1), unit), "invented");
    }

    private Object madeByHand(Class<?> type) {
        TimeSpan time = (TimeSpan) of(TimeSpan.class);
        Speed speed = (Speed) of(Speed.class);
        if (type == BrakeResponse.class) {
            return new BrakeResponse(time, (TimeSpan) of(TimeSpan.class));
        } else if (type == PairOutcome.Contact.class) {
            return PairOutcome.Contact.of(
                    time, speed, (Speed) of(Speed.class), (Speed) of(Speed.class), random.nextBoolean());
        } else if (type == PairOutcome.NoContact.class) {
            return PairOutcome.NoContact.of((Distance) of(Distance.class), time, random.nextBoolean());
        }
        BrakeResponse response = (BrakeResponse) of(BrakeResponse.class);
        Deceleration deceleration = (Deceleration) of(Deceleration.class);
        if (type == BrakingVehicle.class) {
            return BrakingVehicle.of(speed, time, response, deceleration);
        } else if (type == Stop.class) {
            Evident origin = random.nextBoolean() ? null : (Evident) of(Evident.class);
            return Stop.of(speed, time, response, deceleration, origin)
                    .stop()
                    .orElseThrow(() -> new IllegalArgumentException("never stops"));
        }
        throw new IllegalStateException(type + " has a form but no way to draw it");
    }
}
