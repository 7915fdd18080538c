package io.github.stoplag;

import io.github.stoplag.quantity.Speed;
import io.github.stoplag.units.Quantities;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.lang.reflect.Constructor;
import java.lang.reflect.Executable;
import java.lang.reflect.Field;
import java.lang.reflect.Member;
import java.lang.reflect.Method;
import java.lang.reflect.Modifier;
import java.lang.reflect.Type;
import java.net.URI;
import java.net.URISyntaxException;
import java.nio.file.FileSystem;
import java.nio.file.FileSystems;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * What a user of the two published modules can name: their public types and the public and protected members of them.
 * Internal is what says so in its Javadoc, by a paragraph or sentence that starts with {@code Internal:}.
 */
final class PublicApi {
    private static final String ROOT = "io.github.stoplag.";
    private static final List<Path> SOURCES = List.of(
            Path.of("..", "core", "src", "main", "java"), Path.of("..", "units-adapters", "src", "main", "java"));

    private PublicApi() {}

    /** Gives all public types, internal ones too, nested types behind their owners. */
    static List<Class<?>> publicTypes() {
        return Stream.of(Speed.class, Quantities.class)
                .flatMap(type -> classes(type).stream())
                .filter(PublicApi::isReachable)
                .sorted(Comparator.comparing(Class::getName))
                .toList();
    }

    /** Gives the public types that a user shall use. */
    static List<Class<?>> types() {
        return publicTypes().stream().filter(type -> !isInternal(type)).toList();
    }

    static boolean isInternal(Class<?> type) {
        Class<?> outermost = type.getNestHost();
        for (Path sources : SOURCES) {
            Path file = sources.resolve(outermost.getName().replace('.', '/') + ".java");
            if (Files.exists(file)) {
                try {
                    // a Javadoc of the type itself: members are indented
                    return Files.readString(file)
                            .replaceAll("(?s)\npublic .*", "")
                            .contains("Internal:");
                } catch (IOException e) {
                    throw new UncheckedIOException(e);
                }
            }
        }
        throw new IllegalStateException("no source of " + type);
    }

    /** Gives the declared members that are public or protected and that the compiler did not make up. */
    static List<Member> members(Class<?> type) {
        List<Member> members = new ArrayList<>();
        members.addAll(List.of(type.getDeclaredConstructors()));
        members.addAll(List.of(type.getDeclaredFields()));
        members.addAll(List.of(type.getDeclaredMethods()));
        members.removeIf(member -> !isOpen(member.getModifiers()) || member.isSynthetic());
        return members;
    }

    /** Writes one line for each type and each member of it, sorted. */
    static List<String> lines() {
        List<String> lines = new ArrayList<>();
        for (Class<?> type : types()) {
            String name = type.getName().substring(ROOT.length()).replace('$', '.');
            lines.add(name + " : " + kind(type));
            for (Member member : members(type)) {
                if (!isEveryones(type, member)) {
                    lines.add(name + text(member));
                }
            }
        }
        lines.sort(Comparator.naturalOrder());
        return lines;
    }

    /** What all objects, or all enums, have. */
    private static boolean isEveryones(Class<?> type, Member member) {
        return member instanceof Method
                && (List.of("equals", "hashCode", "toString").contains(member.getName())
                        || (type.isEnum() && List.of("values", "valueOf").contains(member.getName())));
    }

    private static String kind(Class<?> type) {
        String kind = type.isAnnotation()
                ? "annotation"
                : type.isInterface() ? "interface" : type.isRecord() ? "record" : type.isEnum() ? "enum" : "class";
        List<String> words = new ArrayList<>(modifiers(type.getModifiers() & ~Modifier.INTERFACE));
        if (type.isInterface() || type.isRecord() || type.isEnum()) {
            words.removeAll(List.of("abstract", "static", "final"));
        }
        if (type.isSealed()) {
            words.add("sealed");
        }
        words.add(kind);
        if (type.getSuperclass() != null
                && !type.isRecord()
                && !type.isEnum()
                && type.getSuperclass() != Object.class) {
            words.add("extends " + name(type.getGenericSuperclass()));
        }
        if (type.getInterfaces().length > 0) {
            words.add("implements " + names(type.getGenericInterfaces()));
        }
        return String.join(" ", words);
    }

    private static String text(Member member) {
        List<String> words = new ArrayList<>(modifiers(member.getModifiers()));
        if (member instanceof Field field) {
            words.add(name(field.getGenericType()));
            return "." + field.getName() + " : " + String.join(" ", words);
        }
        Executable executable = (Executable) member;
        boolean made = member instanceof Constructor<?>;
        words.add(made ? "new" : name(((Method) executable).getGenericReturnType()));
        if (executable.getExceptionTypes().length > 0) {
            words.add("throws " + names(executable.getGenericExceptionTypes()));
        }
        return (made ? "" : "." + executable.getName())
                + "(" + names(executable.getGenericParameterTypes()) + (executable.isVarArgs() ? "..." : "") + ") : "
                + String.join(" ", words);
    }

    private static List<String> modifiers(int modifiers) {
        int told = modifiers & (Modifier.PROTECTED | Modifier.STATIC | Modifier.ABSTRACT | Modifier.FINAL);
        return told == 0 ? List.of() : List.of(Modifier.toString(told).split(" "));
    }

    private static String names(Type[] types) {
        return Arrays.stream(types).map(PublicApi::name).collect(Collectors.joining(", "));
    }

    private static String name(Type type) {
        return type.getTypeName()
                .replaceAll("io\\.github\\.stoplag\\.[a-z]+\\.|java\\.(lang|util|util\\.function)\\.", "")
                .replace('$', '.');
    }

    private static boolean isOpen(int modifiers) {
        return Modifier.isPublic(modifiers) || Modifier.isProtected(modifiers);
    }

    private static boolean isReachable(Class<?> type) {
        Class<?> outer = type.getEnclosingClass();
        return isOpen(type.getModifiers()) && !type.isAnonymousClass() && (outer == null || isReachable(outer));
    }

    private static List<Class<?>> classes(Class<?> ofModule) {
        try {
            URI place =
                    ofModule.getProtectionDomain().getCodeSource().getLocation().toURI();
            Path path = Path.of(place);
            if (Files.isDirectory(path)) {
                return classesIn(path);
            }
            try (FileSystem jar = FileSystems.newFileSystem(path)) {
                return classesIn(jar.getPath("/"));
            }
        } catch (URISyntaxException | IOException e) {
            throw new IllegalStateException(e);
        }
    }

    private static List<Class<?>> classesIn(Path root) throws IOException {
        try (Stream<Path> files = Files.walk(root)) {
            return files.map(file -> root.relativize(file).toString())
                    .filter(file -> file.startsWith("io/") && file.endsWith(".class") && !file.contains("-info"))
                    .<Class<?>>map(
                            file -> load(file.substring(0, file.length() - 6).replace('/', '.')))
                    .toList();
        }
    }

    private static Class<?> load(String name) {
        try {
            return Class.forName(name, false, PublicApi.class.getClassLoader());
        } catch (ClassNotFoundException e) {
            throw new IllegalStateException(e);
        }
    }
}
