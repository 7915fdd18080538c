package io.github.stoplag.quantity;

import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import java.lang.reflect.InvocationTargetException;
import java.util.Comparator;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.junit.platform.commons.util.ReflectionUtils;

/** The value types, found by looking into the package, so that a new one cannot be forgotten. */
record ValueTypes(Class<?> type, Units units) {
    private static final List<ValueTypes> ALL = find();

    static List<ValueTypes> all() {
        return ALL;
    }

    private static List<ValueTypes> find() {
        return new ClassFileImporter()
                        .withImportOption(new ImportOption.DoNotIncludeTests())
                        .importPackages(Units.class.getPackageName())
                        .stream()
                        .filter(each -> each.isRecord() && each.isAssignableTo(Comparable.class))
                        .map(each -> each.reflect())
                        .sorted(Comparator.comparing(Class::getSimpleName))
                        .map(type -> new ValueTypes(type, units(type)))
                        .toList();
    }

    /** The units whose name is the type's, but that a time is called a time span in code. */
    private static Units units(Class<?> type) {
        String name = type.getSimpleName().replace("TimeSpan", "Time").replaceAll("(?<=[a-z])(?=[A-Z])", " ");
        return Units.all().stream()
                .filter(units -> units.quantity().equalsIgnoreCase(name))
                .findFirst()
                .orElseThrow(() -> new AssertionError(type + " has no units"));
    }

    Object parse(String text) {
        return call("parse", null, new Class<?>[] {String.class}, text);
    }

    String format(Object value, String unit, int decimals) {
        return (String) call("format", value, new Class<?>[] {String.class, int.class}, unit, decimals);
    }

    double si(Object value) {
        return (double) ReflectionUtils.invokeMethod(
                ReflectionUtils.getRequiredMethod(type, type.getRecordComponents()[0].getName()), value);
    }

    private Object call(String name, @Nullable Object on, Class<?>[] types, Object... arguments) {
        try {
            return type.getMethod(name, types).invoke(on, arguments);
        } catch (InvocationTargetException e) {
            if (e.getCause() instanceof RuntimeException cause) {
                throw cause;
            }
            throw new AssertionError(e);
        } catch (ReflectiveOperationException e) {
            throw new LinkageError(type + " has no " + name, e);
        }
    }

    @Override
    public String toString() {
        return type.getSimpleName();
    }
}
