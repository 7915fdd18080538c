package io.github.stoplag.json;

import java.lang.reflect.Constructor;
import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.Method;
import java.lang.reflect.RecordComponent;
import java.util.Arrays;

/** Makes an object of its parts. */
interface Maker {
    Object of(Object[] parts) throws ReflectiveOperationException;

    /** Makes the object, or says where and why its parts do not fit. */
    default Object make(Object[] parts, String place) {
        try {
            return of(parts);
        } catch (InvocationTargetException e) {
            if (e.getCause() instanceof RuntimeException reason) {
                throw new Refusal(place + ": " + reason.getMessage(), reason);
            }
            throw new IllegalStateException(place + ": cannot be made", e);
        } catch (IllegalArgumentException e) {
            throw new Refusal(place + ": " + e.getMessage(), e);
        } catch (ReflectiveOperationException e) {
            throw new IllegalStateException(place + ": cannot be made", e);
        }
    }

    /** The constructor of a record with all its components. */
    static Maker canonical(Class<?> type) {
        try {
            Constructor<?> constructor = type.getConstructor(Arrays.stream(type.getRecordComponents())
                    .map(RecordComponent::getType)
                    .toArray(Class<?>[]::new));
            return constructor::newInstance;
        } catch (NoSuchMethodException e) {
            throw new IllegalStateException(type + " hides its constructor", e);
        }
    }

    static Object get(Method getter, Object from) {
        try {
            return getter.invoke(from);
        } catch (ReflectiveOperationException e) {
            throw new IllegalStateException(getter + " cannot be asked", e);
        }
    }
}
