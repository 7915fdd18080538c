package io.github.stoplag.json;

import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonToken;
import io.github.stoplag.source.Evidence;
import io.github.stoplag.source.Evident;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/** The shapes of what holds something else: a list, what may be missing, what can tell its evidence. */
final class Holders {
    private Holders() {}

    /** A list. */
    record Listed(Shape element) implements Shape {
        @Override
        public String suffix() {
            return element.suffix();
        }

        @Override
        public void check(Set<Class<?>> seen) {
            element.check(seen);
        }

        @Override
        public void write(Object value, JsonGenerator out) throws IOException {
            out.writeStartArray();
            for (Object each : (List<?>) value) {
                element.write(each, out);
            }
            out.writeEndArray();
        }

        @Override
        public Object read(JsonParser in, String place) throws IOException {
            Shape.expect(in.currentToken() == JsonToken.START_ARRAY, in, place, "a list");
            List<Object> list = new ArrayList<>();
            while (in.nextToken() != JsonToken.END_ARRAY) {
                list.add(element.readOrNull(in, place + "[" + list.size() + "]"));
            }
            return List.copyOf(list);
        }
    }

    /** What may be missing: null in JSON. */
    record Maybe(Shape element) implements Shape {
        @Override
        public String suffix() {
            return element.suffix();
        }

        @Override
        public void check(Set<Class<?>> seen) {
            element.check(seen);
        }

        @Override
        public void write(Object value, JsonGenerator out) throws IOException {
            Optional<?> held = (Optional<?>) value;
            if (held.isPresent()) {
                element.write(held.get(), out);
            } else {
                out.writeNull();
            }
        }

        @Override
        public Object read(JsonParser in, String place) throws IOException {
            return Optional.of(element.read(in, place));
        }

        @Override
        public Object absent(String place) {
            return Optional.empty();
        }
    }

    /** What may be null. */
    record OrNull(Shape element) implements Shape {
        @Override
        public String suffix() {
            return element.suffix();
        }

        @Override
        public void check(Set<Class<?>> seen) {
            element.check(seen);
        }

        @Override
        public void write(Object value, JsonGenerator out) throws IOException {
            element.write(value, out);
        }

        @Override
        public Object read(JsonParser in, String place) throws IOException {
            return element.read(in, place);
        }

        @Override
        public @Nullable Object absent(String place) {
            return null;
        }
    }

    /** A number that may be missing: null in JSON. */
    static final class MaybeReal implements Shape {
        @Override
        public void write(Object value, JsonGenerator out) throws IOException {
            OptionalDouble held = (OptionalDouble) value;
            if (held.isPresent()) {
                Shapes.REAL.write(held.getAsDouble(), out);
            } else {
                out.writeNull();
            }
        }

        @Override
        public Object read(JsonParser in, String place) throws IOException {
            return OptionalDouble.of((double) Shapes.REAL.read(in, place));
        }

        @Override
        public Object absent(String place) {
            return OptionalDouble.empty();
        }
    }

    /** What a result comes from: its evidence, all that is asked of it afterwards. */
    record Origin(Shape evidence) implements Shape {
        /**
         * An origin read.
         *
         * @param evidence what it rested on
         */
        record Read(Evidence evidence) implements Evident {}

        @Override
        public void write(Object value, JsonGenerator out) throws IOException {
            evidence.write(((Evident) value).evidence(), out);
        }

        @Override
        public Object read(JsonParser in, String place) throws IOException {
            return new Read((Evidence) evidence.read(in, place));
        }
    }
}
