package io.github.stoplag.examples.sweep.run;

import io.github.stoplag.examples.file.InputException;
import java.io.Closeable;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.BasicFileAttributes;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;

/**
 * The right of one run at a time to a folder: a lock on a file beside the folder, which itself can thus be moved and
 * deleted. The system gives it back when the process ends, however it ends.
 */
final class FolderLock implements Closeable {
    // a process that opens and closes a locked file again loses its lock on some systems: asked before any file is
    // touched
    private static final Set<Path> HELD = ConcurrentHashMap.newKeySet();
    // far behind the text, which can be read even where a lock keeps others from reading
    private static final long LOCKED_BYTE = Long.MAX_VALUE - 1;

    private final Path file;
    private final FileChannel channel;

    private FolderLock(Path file, FileChannel channel) {
        this.file = file;
        this.channel = channel;
    }

    /**
     * Takes the right.
     *
     * @throws InputException if another run has it, in this process or another
     */
    static FolderLock of(Path folder) {
        Path whole = folder.toAbsolutePath().normalize();
        try {
            Path parent = Files.createDirectories(whole.resolveSibling(".").normalize());
            Path file = parent.toRealPath().resolve(whole.getFileName() + ".lock");
            if (!HELD.add(file)) {
                throw taken(folder, self());
            }
            Optional<FileChannel> channel = Optional.empty();
            try {
                channel = channel(file);
            } finally {
                if (channel.isEmpty()) {
                    HELD.remove(file);
                }
            }
            return new FolderLock(file, channel.orElseThrow(() -> taken(folder, owner(file))));
        } catch (IOException e) {
            throw new InputException(folder + ": cannot be locked against other runs: " + e.getMessage(), e);
        }
    }

    /** Opens and locks the file; gives nothing if another process has locked it. */
    private static Optional<FileChannel> channel(Path file) throws IOException {
        while (true) {
            FileChannel channel = FileChannel.open(file, StandardOpenOption.CREATE, StandardOpenOption.WRITE);
            String opened = key(file);
            if (channel.tryLock(LOCKED_BYTE, 1, false) == null) {
                channel.close();
                return Optional.empty();
            }
            // the run before may have removed the file after it was opened here: a lock that nobody else would find
            if (opened.equals(key(file)) && !opened.isEmpty()) {
                channel.truncate(0);
                channel.write(ByteBuffer.wrap((self() + "\n").getBytes(StandardCharsets.US_ASCII)), 0);
                return Optional.of(channel);
            }
            channel.close();
        }
    }

    /** Tells a file from another one of the same name without opening it; empty if it is gone. */
    private static String key(Path file) throws IOException {
        try {
            BasicFileAttributes found = Files.readAttributes(file, BasicFileAttributes.class);
            return found.fileKey() + " " + found.creationTime();
        } catch (NoSuchFileException e) {
            return "";
        }
    }

    private static String self() {
        return "process " + ProcessHandle.current().pid();
    }

    private static String owner(Path file) {
        try {
            return Files.readString(file, StandardCharsets.ISO_8859_1).strip();
        } catch (IOException e) {
            return "";
        }
    }

    private static InputException taken(Path folder, String owner) {
        return new InputException(
                folder + ": another run is at work there" + (owner.isEmpty() ? "" : " (" + owner + ")")
                        + "; wait until it ends or name another folder with --out");
    }

    /** Gives the right back. */
    @Override
    public void close() throws IOException {
        if (channel.isOpen()) {
            try {
                Files.deleteIfExists(file);
            } finally {
                channel.close();
                HELD.remove(file);
            }
        }
    }
}
