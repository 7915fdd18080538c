package io.github.stoplag.json;

import io.github.stoplag.source.Evidence;
import io.github.stoplag.source.Evident;
import io.github.stoplag.worked.Unit;
import java.lang.reflect.Modifier;
import java.lang.reflect.ParameterizedType;
import java.lang.reflect.Type;
import java.math.BigDecimal;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/** Finds the shape of a type. */
final class Shapes {
    static final Shape REAL = new Scalars.Real();

    private static final String OURS = "io.github.stoplag.";
    private static final Shape WHOLE = new Scalars.Whole(false);
    private static final Shape SMALL_WHOLE = new Scalars.Whole(true);
    private static final Shape TRUTH = new Scalars.Truth();
    private static final Map<Class<?>, Shape> PLAIN = Map.ofEntries(
            Map.entry(double.class, REAL),
            Map.entry(Double.class, REAL),
            Map.entry(int.class, SMALL_WHOLE),
            Map.entry(Integer.class, SMALL_WHOLE),
            Map.entry(long.class, WHOLE),
            Map.entry(Long.class, WHOLE),
            Map.entry(boolean.class, TRUTH),
            Map.entry(Boolean.class, TRUTH),
            Map.entry(String.class, new Scalars.Text(Object::toString, text -> text)),
            // a text, since a reader of numbers may drop the zeros at the end
            Map.entry(BigDecimal.class, new Scalars.Text(Object::toString, BigDecimal::new)),
            Map.entry(Unit.class, new Scalars.Text(unit -> ((Unit) unit).symbol(), Unit::of)),
            Map.entry(OptionalDouble.class, new Holders.MaybeReal()));

    private static final ClassValue<Shape> OBJECTS = new ClassValue<>() {
        @Override
        protected Shape computeValue(Class<?> type) {
            return find(type);
        }
    };

    private Shapes() {}

    /** Says whether a type is one of this library's that Jackson should leave to it. */
    static boolean covers(Class<?> asked) {
        Class<?> type = named(asked);
        return type.getName().startsWith(OURS)
                && isPublic(type)
                && (type.isRecord() || type.isSealed() || type.isEnum() || Unit.class == type || Classes.covers(type));
    }

    /** Gives the enum for the class of a constant that has a body. */
    private static Class<?> named(Class<?> type) {
        Class<?> above = type.getSuperclass();
        return above != null && above.isEnum() ? above : type;
    }

    private static boolean isPublic(Class<?> type) {
        Class<?> outer = type.getDeclaringClass();
        return Modifier.isPublic(type.getModifiers()) && (outer == null || isPublic(outer));
    }

    /** Gives the shape of a type that stands alone: a value then brings its name and unit. */
    static Shape alone(Class<?> type) {
        Shape shape = of(type);
        if (!(shape instanceof ValueShape)) {
            return shape;
        }
        Part value = Part.of(type.getSimpleName(), shape, number -> number);
        return new ObjectShape(type, Optional.empty(), () -> List.of(value), parts -> parts[0]);
    }

    /** Gives the shape of a type that is part of something. */
    static Shape of(Type type) {
        if (type instanceof Class<?> simple) {
            Shape plain = PLAIN.get(simple);
            return plain != null ? plain : OBJECTS.get(named(simple));
        }
        if (type instanceof ParameterizedType made) {
            Type element = made.getActualTypeArguments()[0];
            if (made.getRawType() == List.class) {
                return new Holders.Listed(of(element));
            } else if (made.getRawType() == Optional.class) {
                return new Holders.Maybe(of(element));
            }
        }
        throw new NoForm(type.getTypeName().replaceAll("[a-z.]+\\.", "") + " has no form in JSON");
    }

    private static Shape find(Class<?> type) {
        if (type == Evident.class) {
            return new Holders.Origin(of(Evidence.class));
        } else if (type.isEnum()) {
            return Scalars.word(type);
        } else if (ValueShape.covers(type)) {
            return ValueShape.of(type);
        } else if (Classes.covers(type)) {
            return Classes.shape(type);
        } else if (type.isRecord()) {
            return new ObjectShape(
                    type,
                    kind(type),
                    () -> Arrays.stream(type.getRecordComponents())
                            .map(component -> Part.of(component, type))
                            .toList(),
                    Maker.canonical(type));
        } else if (type.isSealed() && type.isInterface()) {
            return new FamilyShape(type);
        }
        throw new NoForm(type.getSimpleName() + " has no form in JSON");
    }

    /** Gives the word of a type among the members of its family. */
    static Optional<String> kind(Class<?> type) {
        boolean member = Arrays.stream(type.getInterfaces())
                .anyMatch(each -> each.isSealed() && each.getName().startsWith(OURS));
        return member ? Optional.of(Words.kebab(type.getSimpleName())) : Optional.empty();
    }
}
