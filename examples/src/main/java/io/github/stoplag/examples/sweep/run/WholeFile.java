package io.github.stoplag.examples.sweep.run;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.file.AccessDeniedException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;

/**
 * A file that another run may have to rely on: its name, size and SHA-256.
 *
 * @param name the name in its folder
 * @param bytes the size
 * @param sha256 the digest as hexadecimal text
 */
record WholeFile(String name, long bytes, String sha256) {
    /** Describes a file as it stands. */
    static WholeFile of(Path file) throws IOException {
        return new WholeFile(String.valueOf(file.getFileName()), Files.size(file), Sha256.of(file));
    }

    /**
     * Puts a finished file into its place in one step, its bytes on the disk before, so that no power failure leaves
     * half of it there.
     */
    static void place(Path finished, Path place) throws IOException {
        force(finished);
        Files.move(finished, place, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
        forceEntries(place.toAbsolutePath().resolveSibling("."));
    }

    /** Says whether the file is in a folder as it was described. */
    boolean isIn(Path folder) throws IOException {
        Path file = folder.resolve(name);
        return Files.isRegularFile(file) && of(file).equals(this);
    }

    /** Waits until the bytes of a file are on the disk. */
    static void force(Path file) throws IOException {
        try (FileChannel channel = FileChannel.open(file, StandardOpenOption.WRITE)) {
            channel.force(true);
        }
    }

    /** Waits until the names in a folder are on the disk, where the system can do that. */
    static void forceEntries(Path folder) throws IOException {
        try (FileChannel channel = FileChannel.open(folder, StandardOpenOption.READ)) {
            channel.force(true);
        } catch (AccessDeniedException e) {
            // a system that opens no folders writes their entries down by itself
            if (Files.isReadable(folder) && System.getProperty("os.name").startsWith("Linux")) {
                throw e;
            }
        }
    }
}
