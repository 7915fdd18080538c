package io.github.stoplag.json;

import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonToken;
import java.io.IOException;
import java.util.HashSet;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/** How the values of one type stand in JSON. */
interface Shape {
    void write(Object value, JsonGenerator out) throws IOException;

    /**
     * Reads a value.
     *
     * @param in at the first token of the value, afterwards at its last
     * @param place where in the text, for a refusal
     */
    Object read(JsonParser in, String place) throws IOException;

    /** Gives what the name of a field of this shape ends with: its unit, else nothing. */
    default String suffix() {
        return "";
    }

    /** Gives what stands for null in a value read, or refuses null. */
    default @Nullable Object absent(String place) {
        throw new Refusal(place + " must not be null");
    }

    /** Refuses a type that has no form, or holds one. */
    default void check() {
        check(new HashSet<>());
    }

    default void check(Set<Class<?>> seen) {}

    /** Reads a value that may be null. */
    default @Nullable Object readOrNull(JsonParser in, String place) throws IOException {
        return in.currentToken() == JsonToken.VALUE_NULL ? absent(place) : read(in, place);
    }

    /** Refuses a token of another kind. */
    static void expect(boolean right, JsonParser in, String place, String what) throws IOException {
        if (!right) {
            JsonToken token = in.currentToken();
            String got = token != null && token.isScalarValue() ? in.getText() : String.valueOf(token);
            throw new Refusal(place + " must be " + what + ", got " + got);
        }
    }
}
