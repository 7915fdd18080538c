package io.github.stoplag.json;

import java.lang.reflect.AnnotatedType;
import java.lang.reflect.RecordComponent;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;

/**
 * A part of an object.
 *
 * @param name its name in JSON, with its unit
 * @param shape its shape
 * @param getter how to ask for it
 */
record Part(String name, Shape shape, Function<Object, @Nullable Object> getter) {
    static Part of(String javaName, Shape shape, Function<Object, @Nullable Object> getter) {
        String unit = shape.suffix();
        String name = Words.snake(javaName);
        return new Part(unit.isEmpty() || name.endsWith("_" + unit) ? name : name + "_" + unit, shape, getter);
    }

    static Part of(RecordComponent component, Class<?> owner) {
        AnnotatedType type = component.getAnnotatedType();
        Shape shape;
        try {
            shape = Shapes.of(component.getGenericType());
        } catch (NoForm e) {
            throw new NoForm(owner.getSimpleName() + "." + component.getName() + ": " + e.getMessage());
        }
        if (type.isAnnotationPresent(Nullable.class)) {
            shape = new Holders.OrNull(shape);
        }
        return of(component.getName(), shape, value -> Maker.get(component.getAccessor(), value));
    }
}
