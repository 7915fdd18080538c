package io.github.stoplag.kernel;

import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import java.lang.reflect.Constructor;
import java.lang.reflect.Executable;
import java.lang.reflect.Field;
import java.lang.reflect.Method;
import java.lang.reflect.Modifier;
import java.lang.reflect.Parameter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

/** Every double of the kernel says its unit: parameters, results, record components, constants. */
class UnitSuffixTest {
    private static final List<String> SUFFIXES = List.of(
            "Mps", "Mps2", "Mps3", "S", "M", "Ratio", "K", "V", "A", "W", "Ohm", "Cd", "Lx", "Kg", "J", "N", "Ns");
    private static final Pattern CAMEL = Pattern.compile(".*[a-z0-9](" + String.join("|", SUFFIXES) + ")");
    // constants are written as GRAZING_M
    private static final Pattern CONSTANT =
            Pattern.compile(".*_(" + String.join("|", SUFFIXES).toUpperCase(Locale.ROOT) + ")");

    @Test
    void everyPublicDoubleOfTheKernelCarriesItsUnit() {
        List<String> bare = new ArrayList<>();
        int[] seen = {0};
        for (Class<?> type : publicTypes()) {
            for (Constructor<?> constructor : type.getConstructors()) {
                checkParameters(constructor, bare, seen);
            }
            for (Method method : type.getDeclaredMethods()) {
                if (Modifier.isPublic(method.getModifiers()) && !method.isSynthetic() && !isFromObject(method)) {
                    checkParameters(method, bare, seen);
                    check(method.getReturnType(), method.getName(), CAMEL, describe(method), bare, seen);
                }
            }
            for (Field field : type.getFields()) {
                Pattern pattern = Modifier.isStatic(field.getModifiers()) ? CONSTANT : CAMEL;
                check(
                        field.getType(),
                        field.getName(),
                        pattern,
                        type.getSimpleName() + "." + field.getName(),
                        bare,
                        seen);
            }
        }
        assertThat(bare).as("doubles without a unit suffix from %s", SUFFIXES).isEmpty();
        assertThat(seen[0]).as("doubles looked at").isGreaterThan(80);
    }

    @Test
    void theRuleFindsABareDouble() {
        assertThat(CAMEL.matcher("speedMps").matches()).isTrue();
        assertThat(CAMEL.matcher("speed").matches()).isFalse();
        assertThat(CAMEL.matcher("distanceMetres").matches()).isFalse();
        assertThat(CONSTANT.matcher("GRAZING").matches()).isFalse();
    }

    private static List<Class<?>> publicTypes() {
        List<Class<?>> types = new ArrayList<>();
        for (JavaClass type : new ClassFileImporter()
                .withImportOption(new ImportOption.DoNotIncludeTests())
                .importPackages(StopKernel.class.getPackageName())) {
            Class<?> loaded = type.reflect();
            if (Modifier.isPublic(loaded.getModifiers())) {
                types.add(loaded);
            }
        }
        assertThat(types).contains(StopKernel.class, GapKernel.class, Trajectory.class, Trajectory.Phase.class);
        return types;
    }

    private static void checkParameters(Executable executable, List<String> bare, int[] seen) {
        for (Parameter parameter : executable.getParameters()) {
            assertThat(parameter.isNamePresent())
                    .as("compiled with -parameters")
                    .isTrue();
            check(
                    parameter.getType(),
                    parameter.getName(),
                    CAMEL,
                    describe(executable) + " " + parameter.getName(),
                    bare,
                    seen);
        }
    }

    private static void check(
            Class<?> type, String name, Pattern pattern, String where, List<String> bare, int[] seen) {
        if (type == double.class || type == double[].class || type == OptionalDouble.class) {
            seen[0]++;
            if (!pattern.matcher(name).matches()) {
                bare.add(where);
            }
        }
    }

    private static boolean isFromObject(Method method) {
        return List.of("equals", "hashCode", "toString").contains(method.getName());
    }

    private static String describe(Executable executable) {
        return executable.getDeclaringClass().getSimpleName() + "." + executable.getName();
    }
}
