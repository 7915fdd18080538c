package io.github.stoplag.json;

import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonToken;
import java.io.IOException;
import java.math.BigDecimal;
import java.util.Arrays;
import java.util.List;
import java.util.function.Function;
import java.util.stream.Collectors;

/** The shapes of what is no object in JSON: numbers, truth values, words. */
final class Scalars {
    private static final List<String> NOT_FINITE = List.of("Infinity", "-Infinity", "NaN");

    private Scalars() {}

    /** A plain number, or the word for an infinite or undefined one. */
    static final class Real implements Shape {
        @Override
        public void write(Object value, JsonGenerator out) throws IOException {
            double number = (double) value;
            if (Double.isFinite(number)) {
                out.writeNumber(number);
            } else {
                out.writeString(Double.toString(number));
            }
        }

        @Override
        public Object read(JsonParser in, String place) throws IOException {
            if (in.currentToken() == JsonToken.VALUE_STRING && NOT_FINITE.contains(in.getText())) {
                return Double.valueOf(in.getText());
            }
            JsonToken token = in.currentToken();
            Shape.expect(token != null && token.isNumeric(), in, place, "a number");
            // the parser's own double, from the digits
            double number = Double.parseDouble(in.getText());
            Shape.expect(Double.isFinite(number), in, place, "a number within the range of a double");
            return number;
        }
    }

    /** A whole number. */
    record Whole(boolean small) implements Shape {
        @Override
        public void write(Object value, JsonGenerator out) throws IOException {
            out.writeNumber(((Number) value).longValue());
        }

        @Override
        public Object read(JsonParser in, String place) throws IOException {
            Shape.expect(in.currentToken() == JsonToken.VALUE_NUMBER_INT, in, place, "a whole number");
            long lo = small ? Integer.MIN_VALUE : Long.MIN_VALUE;
            long hi = small ? Integer.MAX_VALUE : Long.MAX_VALUE;
            BigDecimal number = in.getDecimalValue();
            boolean within =
                    number.compareTo(BigDecimal.valueOf(lo)) >= 0 && number.compareTo(BigDecimal.valueOf(hi)) <= 0;
            Shape.expect(within, in, place, "a whole number in [" + lo + ", " + hi + "]");
            if (small) {
                return number.intValueExact();
            }
            return number.longValueExact();
        }
    }

    /** True or false. */
    static final class Truth implements Shape {
        @Override
        public void write(Object value, JsonGenerator out) throws IOException {
            out.writeBoolean((boolean) value);
        }

        @Override
        public Object read(JsonParser in, String place) throws IOException {
            JsonToken token = in.currentToken();
            Shape.expect(token != null && token.isBoolean(), in, place, "true or false");
            return in.getBooleanValue();
        }
    }

    /** A text that a type is written as and read from. */
    record Text(Function<Object, String> written, Function<String, Object> readBack) implements Shape {
        @Override
        public void write(Object value, JsonGenerator out) throws IOException {
            out.writeString(written.apply(value));
        }

        @Override
        public Object read(JsonParser in, String place) throws IOException {
            Shape.expect(in.currentToken() == JsonToken.VALUE_STRING, in, place, "a text");
            try {
                return readBack.apply(in.getText());
            } catch (IllegalArgumentException e) {
                throw new Refusal(place + ": " + e.getMessage(), e);
            }
        }
    }

    /** One of the words of an enum. */
    static Text word(Class<?> type) {
        Object[] constants = type.getEnumConstants();
        return new Text(
                Scalars::name,
                text -> Arrays.stream(constants)
                        .filter(constant -> name(constant).equals(text))
                        .findFirst()
                        .orElseThrow(() -> new IllegalArgumentException("must be one of "
                                + Arrays.stream(constants).map(Scalars::name).collect(Collectors.joining(", "))
                                + ", got "
                                + text)));
    }

    private static String name(Object constant) {
        return Words.kebab(((Enum<?>) constant).name());
    }
}
