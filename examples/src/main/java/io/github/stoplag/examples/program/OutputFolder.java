package io.github.stoplag.examples.program;

import io.github.stoplag.examples.file.InputException;
import java.io.IOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.NotDirectoryException;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.Comparator;
import java.util.Map;
import java.util.UUID;
import java.util.function.Predicate;
import java.util.stream.Stream;

/**
 * Puts a set of files into a folder all at once: they are written beside it and moved into place together, so that a
 * failure leaves the folder as it was.
 */
public final class OutputFolder {
    private final Path asked;
    private final Path folder;

    private OutputFolder(Path asked, Path folder) {
        this.asked = asked;
        this.folder = folder;
    }

    /**
     * Checks that a folder may be replaced: it does not exist, or it holds nothing but files that the program may have
     * written.
     *
     * @throws InputException if the path is a file or the folder holds anything else
     */
    public static OutputFolder of(Path path, Predicate<String> own) {
        Path folder = path.toAbsolutePath().normalize();
        if (folder.getParent() == null) {
            throw new InputException("--out = " + path + ": must be a folder below another one");
        }
        if (Files.exists(folder) && !Files.isDirectory(folder)) {
            throw new InputException("--out = " + path + ": is a file, must be a folder");
        }
        if (Files.isDirectory(folder)) {
            try (Stream<Path> entries = Files.list(folder)) {
                entries.filter(entry -> !own.test(String.valueOf(entry.getFileName())))
                        .sorted()
                        .findFirst()
                        .ifPresent(entry -> {
                            throw new InputException("--out = " + path + ": holds " + entry.getFileName()
                                    + ", which this program did not write; name a new or empty folder");
                        });
            } catch (IOException e) {
                throw new InputException("--out = " + path + ": cannot be read: " + reason(e), e);
            }
        }
        return new OutputFolder(path, folder);
    }

    /** The path as it is printed: from the folder the program runs in, if it lies below it. */
    public static Path shown(Path path) {
        Path here = Path.of("").toAbsolutePath();
        Path there = path.toAbsolutePath().normalize();
        return there.startsWith(here) ? here.relativize(there) : path;
    }

    /**
     * Writes the files.
     *
     * @throws InputException if they cannot be written; the folder is then as it was before
     */
    void replaceWith(Map<String, byte[]> contentByName) {
        try {
            write(contentByName);
        } catch (IOException e) {
            throw new InputException("--out = " + asked + ": cannot be written: " + reason(e), e);
        }
    }

    /**
     * Puts a folder beside it in its place; only one caller at a time.
     *
     * @throws InputException if it cannot be moved; the folder is then as it was before
     */
    public void replaceWith(Path fresh) {
        try {
            // a name that the next run finds again if this one is killed here
            Path work = folder.resolveSibling(".stoplag-" + folder.getFileName());
            if (Files.exists(work)) {
                delete(work);
            }
            Files.createDirectory(work);
            try {
                swap(fresh, work.resolve("old"));
            } finally {
                delete(work);
            }
        } catch (IOException e) {
            throw new InputException("--out = " + asked + ": cannot be written: " + reason(e), e);
        }
    }

    /** Deletes a folder with all it holds. */
    public static void deleteAll(Path folder) {
        try {
            delete(folder);
        } catch (IOException e) {
            throw new InputException(folder + ": cannot be deleted: " + reason(e), e);
        }
    }

    public static String reason(IOException e) {
        if (e instanceof AccessDeniedException) {
            return "no permission";
        } else if (e instanceof NoSuchFileException) {
            return "no folder can be made there";
        } else if (e instanceof FileAlreadyExistsException || e instanceof NotDirectoryException) {
            return "a folder above it is a file";
        }
        String said = e instanceof FileSystemException inFile ? inFile.getReason() : e.getMessage();
        return said == null ? "the file system refuses" : said;
    }

    private void write(Map<String, byte[]> contentByName) throws IOException {
        Path parent = folder.resolveSibling(".").normalize();
        Files.createDirectories(parent);
        Path work = Files.createDirectory(parent.resolve(".stoplag-" + UUID.randomUUID()));
        try {
            Path fresh = Files.createDirectory(work.resolve("new"));
            for (Map.Entry<String, byte[]> file : contentByName.entrySet()) {
                Files.write(fresh.resolve(file.getKey()), file.getValue());
            }
            swap(fresh, work.resolve("old"));
        } finally {
            delete(work);
        }
    }

    private void swap(Path fresh, Path old) throws IOException {
        boolean existed = Files.exists(folder);
        if (existed) {
            Files.move(folder, old, StandardCopyOption.ATOMIC_MOVE);
        }
        try {
            Files.move(fresh, folder, StandardCopyOption.ATOMIC_MOVE);
        } catch (IOException e) {
            if (existed) {
                Files.move(old, folder, StandardCopyOption.ATOMIC_MOVE);
            }
            throw e;
        }
    }

    private static void delete(Path folder) throws IOException {
        try (Stream<Path> entries = Files.walk(folder)) {
            for (Path entry : entries.sorted(Comparator.reverseOrder()).toList()) {
                Files.delete(entry);
            }
        }
    }
}
