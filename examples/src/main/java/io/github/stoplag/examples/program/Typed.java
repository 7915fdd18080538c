package io.github.stoplag.examples.program;

import io.github.stoplag.film.TransferCurve;
import io.github.stoplag.quantity.Speed;
import io.github.stoplag.quantity.TimeSpan;
import java.util.function.Function;
import picocli.CommandLine;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/** Options that hold a quantity: the core reads the text and says what is wrong with it. */
public final class Typed {
    private Typed() {}

    /** Lets a command line and its programs read them. */
    public static void register(CommandLine line) {
        line.registerConverter(TimeSpan.class, reading(TimeSpan::parse));
        line.registerConverter(Speed.class, reading(Speed::parse));
        line.registerConverter(TransferCurve.class, reading(TransferCurve::parse));
    }

    private static <T> ITypeConverter<T> reading(Function<String, T> parse) {
        return text -> converted(text, parse);
    }

    /**
     * Reads one text.
     *
     * @throws TypeConversionException if it cannot be read; the command line adds the option's name
     */
    public static <T> T converted(String text, Function<String, T> parse) {
        try {
            return parse.apply(text.strip());
        } catch (IllegalArgumentException e) {
            throw new TypeConversionException(String.valueOf(e.getMessage()));
        }
    }
}
