package io.github.stoplag.examples.spark;

import io.github.stoplag.examples.file.InputException;
import java.io.FileNotFoundException;
import java.io.IOException;
import java.io.OutputStream;
import java.util.ArrayList;
import java.util.List;
import org.apache.hadoop.conf.Configuration;
import org.apache.hadoop.fs.FileStatus;
import org.apache.hadoop.fs.FileSystem;
import org.apache.hadoop.fs.Path;

/**
 * The folder of a job's results on any file system that Hadoop knows. The manifest is written last and removed first:
 * where it stands the results are whole.
 */
final class ResultFolder {
    static final String ROWS = "rows";
    static final String STATISTICS = "statistics.bin";
    static final String MANIFEST = "manifest.json";

    private static final String UNFINISHED = ".unfinished";

    private final String shown;
    private final Path folder;
    private final FileSystem files;

    private ResultFolder(String shown, Path folder, FileSystem files) {
        this.shown = shown;
        this.folder = folder;
        this.files = files;
    }

    /**
     * Opens a folder that does not exist, or holds nothing but an earlier job's results.
     *
     * @throws InputException if it holds anything else, is a file, or cannot be reached
     */
    static ResultFolder open(String shown, Configuration configuration) {
        try {
            Path folder = new Path(shown);
            FileSystem files = folder.getFileSystem(configuration);
            for (String name : names(files, folder)) {
                if (!List.of(ROWS, STATISTICS, MANIFEST).contains(name) && !name.endsWith(UNFINISHED)) {
                    throw new InputException("--out = " + shown + ": holds " + name
                            + ", which this program did not write; name a new or empty folder");
                }
            }
            return new ResultFolder(shown, folder, files);
        } catch (IOException | IllegalArgumentException e) {
            throw new InputException("--out = " + shown + ": cannot be used: " + e.getMessage(), e);
        }
    }

    private static List<String> names(FileSystem files, Path folder) throws IOException {
        List<String> names = new ArrayList<>();
        try {
            for (FileStatus entry : files.listStatus(folder)) {
                if (entry.getPath().equals(files.makeQualified(folder))) {
                    throw new IOException("is a file, must be a folder");
                }
                names.add(entry.getPath().getName());
            }
        } catch (FileNotFoundException e) {
            return List.of();
        }
        return names;
    }

    String rows() {
        return new Path(folder, ROWS).toString();
    }

    /** Takes back that the results are whole. */
    void begin() throws IOException {
        files.delete(new Path(folder, MANIFEST), false);
        files.delete(new Path(folder, STATISTICS), false);
    }

    /** Writes a file under another name and moves it. */
    void write(String name, byte[] content) throws IOException {
        Path unfinished = new Path(folder, name + UNFINISHED);
        try (OutputStream out = files.create(unfinished, true)) {
            out.write(content);
        }
        Path place = new Path(folder, name);
        files.delete(place, false);
        if (!files.rename(unfinished, place)) {
            throw new IOException(place + " cannot be put into its place");
        }
    }

    /** The folder as it is printed: from the folder the program runs in, if it lies below it. */
    @Override
    public String toString() {
        String here = java.nio.file.Path.of("").toAbsolutePath() + "/";
        return shown.startsWith(here) ? shown.substring(here.length()) : shown;
    }
}
