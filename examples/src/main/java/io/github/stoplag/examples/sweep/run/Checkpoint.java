package io.github.stoplag.examples.sweep.run;

import io.github.stoplag.examples.file.InputException;
import io.github.stoplag.examples.program.Build;
import io.github.stoplag.sweep.CheckpointFormat;
import io.github.stoplag.sweep.PlanFile;
import io.github.stoplag.sweep.SweepResult;
import java.io.BufferedInputStream;
import java.io.BufferedOutputStream;
import java.io.DataInputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/** How far a cut-off run has come, as a file that is replaced whole. */
final class Checkpoint {
    static final String FILE = "checkpoint.bin";

    private static final String UNFINISHED = FILE + ".unfinished";
    private static final String FORM = "cut-off sweep, form 2";

    private final Path file;
    private final PlanFile plan;
    private final SweepRows rows;
    private final CheckpointFormat format;

    Checkpoint(Path folder, PlanFile plan, SweepRows rows) {
        this.file = folder.resolve(FILE);
        this.plan = plan;
        this.rows = rows;
        this.format = CheckpointFormat.of(plan.plan());
    }

    static boolean isIn(Path folder) {
        return Files.exists(folder.resolve(FILE));
    }

    static boolean isName(String name) {
        return name.equals(FILE) || name.equals(UNFINISHED);
    }

    /**
     * What it holds.
     *
     * @param result the statistics so far
     * @param parts the part files that were whole by then
     */
    record Content(SweepResult<SweepTally> result, List<WholeFile> parts) {}

    void write(SweepResult<SweepTally> result, List<WholeFile> parts) throws IOException {
        Path fresh = file.resolveSibling(UNFINISHED);
        try (DataOutputStream out = new DataOutputStream(new BufferedOutputStream(Files.newOutputStream(fresh)))) {
            out.writeUTF(FORM);
            out.writeUTF(Build.stoplagVersion());
            out.writeUTF(plan.digest());
            out.writeUTF(rows.toString());
            out.writeInt(parts.size());
            for (WholeFile part : parts) {
                out.writeUTF(part.name());
                out.writeLong(part.bytes());
                out.writeUTF(part.sha256());
            }
            format.write(result, out);
        }
        WholeFile.place(fresh, file);
    }

    /**
     * Reads it.
     *
     * @throws InputException if it is missing, damaged, or of another version, another plan or other rows
     */
    Content read(SweepTally total) {
        try (DataInputStream in = new DataInputStream(new BufferedInputStream(Files.newInputStream(file)))) {
            require(in.readUTF(), FORM, "this program's form");
            require(in.readUTF(), Build.stoplagVersion(), "this version of the library");
            require(in.readUTF(), plan.digest(), "the plan " + plan.name());
            require(in.readUTF(), rows.toString(), "the same --rows and --format");
            List<WholeFile> parts = new ArrayList<>();
            for (int left = in.readInt(); left > 0; left--) {
                parts.add(new WholeFile(in.readUTF(), in.readLong(), in.readUTF()));
            }
            return new Content(format.read(in, total), parts);
        } catch (IOException e) {
            throw new InputException("--resume: " + file + ": cannot be used: " + reason(e), e);
        }
    }

    private static String reason(IOException e) {
        return e.getMessage() == null ? "it ends too early" : e.getMessage();
    }

    private static void require(String found, String wanted, String what) throws IOException {
        if (!found.equals(wanted)) {
            throw new IOException("it must be of " + what + " (" + wanted + "), got " + found);
        }
    }
}
