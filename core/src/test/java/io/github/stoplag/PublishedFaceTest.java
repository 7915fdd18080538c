package io.github.stoplag;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.Method;
import java.lang.reflect.Modifier;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.assertj.core.api.InstanceOfAssertFactories;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/** Every class of the core that publishes rows shows them by the same two methods, and reads them once. */
class PublishedFaceTest {
    private static final List<String> OTHER_NAMES =
            List.of("find", "named", "names", "surfaces", "figures", "thresholds", "publishedRestitutions");

    @TestFactory
    Stream<DynamicTest> listsAndFindsWhatItPublishes() {
        return types().filter(type -> method(type, "published").isPresent())
                .map(type -> DynamicTest.dynamicTest(type.getSimpleName(), () -> {
                    Method list = method(type, "published").orElseThrow();
                    Object rows = list.invoke(null);
                    assertThat(rows)
                            .asInstanceOf(InstanceOfAssertFactories.LIST)
                            .isNotEmpty();
                    assertThat(list.invoke(null)).as("read once").isSameAs(rows);
                    Method find = method(type, "published", String.class).orElseThrow();
                    assertThatThrownBy(() -> find.invoke(null, "no such row"))
                            .isInstanceOf(InvocationTargetException.class)
                            .cause()
                            .isInstanceOf(IllegalArgumentException.class)
                            .message()
                            .matches("[A-Za-z -]+ must be one of .+, got \"no such row.*\"");
                }));
    }

    @Test
    void thereAreManyAndNoOtherNamesForIt() {
        assertThat(types().filter(type -> method(type, "published").isPresent()))
                .hasSizeGreaterThan(15);
        assertThat(types().flatMap(type -> Arrays.stream(type.getDeclaredMethods()))
                        .filter(method -> Modifier.isPublic(method.getModifiers())
                                && Modifier.isStatic(method.getModifiers())
                                && OTHER_NAMES.contains(method.getName())))
                .isEmpty();
    }

    private static Stream<? extends Class<?>> types() {
        return new ClassFileImporter()
                .withImportOption(new ImportOption.DoNotIncludeTests()).importPackages("io.github.stoplag").stream()
                        .map(JavaClass::reflect)
                        .filter(type -> Modifier.isPublic(type.getModifiers()));
    }

    private static Optional<Method> method(Class<?> type, String name, Class<?>... parameters) {
        return Arrays.stream(type.getDeclaredMethods())
                .filter(method -> method.getName().equals(name)
                        && Modifier.isStatic(method.getModifiers())
                        && Modifier.isPublic(method.getModifiers())
                        && Arrays.equals(method.getParameterTypes(), parameters))
                .findFirst();
    }
}
