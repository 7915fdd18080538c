package io.github.stoplag.examples;

import io.github.stoplag.examples.circuit.CircuitCommand;
import io.github.stoplag.examples.file.InputException;
import io.github.stoplag.examples.film.FilmCommand;
import io.github.stoplag.examples.following.FollowingCommand;
import io.github.stoplag.examples.gallery.GalleryCommand;
import io.github.stoplag.examples.lampswap.LampSwapCommand;
import io.github.stoplag.examples.onset.OnsetCommand;
import io.github.stoplag.examples.program.Build;
import io.github.stoplag.examples.program.CompletionCommand;
import io.github.stoplag.examples.program.Typed;
import io.github.stoplag.examples.rules.StoppingTablesCommand;
import io.github.stoplag.examples.sweep.SweepCommand;
import io.github.stoplag.examples.teach.ExplainCommand;
import io.github.stoplag.examples.teach.WorksheetCommand;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.util.List;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.ExitCode;
import picocli.CommandLine.ParameterException;

/** The entry point of the example programs; without arguments it runs {@code lamp-swap} on the shipped scenario. */
@Command(
        name = "stoplag",
        subcommands = {
            LampSwapCommand.class,
            CircuitCommand.class,
            FilmCommand.class,
            OnsetCommand.class,
            FollowingCommand.class,
            GalleryCommand.class,
            StoppingTablesCommand.class,
            SweepCommand.class,
            ExplainCommand.class,
            WorksheetCommand.class,
            CompletionCommand.class,
            CommandLine.HelpCommand.class
        },
        mixinStandardHelpOptions = true,
        versionProvider = Build.class,
        description = "Example programs of the Stoplag library. Without arguments: lamp-swap.",
        footer = {"", "Options of a program: stoplag <program> --help"})
public final class Main {
    private Main() {}

    /**
     * Runs a program and ends the process with its exit code if that is not 0.
     *
     * @param args the program's name and its options; none for {@code lamp-swap} with its defaults
     */
    public static void main(String[] args) {
        PrintWriter out = new PrintWriter(System.out, true, StandardCharsets.UTF_8);
        PrintWriter err = new PrintWriter(System.err, true, StandardCharsets.UTF_8);
        int exitCode = run(out, err, args);
        if (exitCode != ExitCode.OK) {
            System.exit(exitCode);
        }
    }

    /**
     * Runs a program without ending the process.
     *
     * @param out where the printed report goes
     * @param err where the one line about a bad input goes
     * @param args the program's name and its options; none for {@code lamp-swap} with its defaults
     * @return 0 if all went well, 2 if an input cannot be used, 1 if the program failed
     */
    public static int run(PrintWriter out, PrintWriter err, String... args) {
        CommandLine line = new CommandLine(new Main())
                .setOut(out)
                .setErr(err)
                .setCaseInsensitiveEnumValuesAllowed(true)
                .setColorScheme(CommandLine.Help.defaultColorScheme(CommandLine.Help.Ansi.OFF))
                .setParameterExceptionHandler(Main::badArguments)
                .setExecutionExceptionHandler(Main::failed);
        Typed.register(line);
        return line.execute(args.length == 0 ? new String[] {"lamp-swap"} : inOrder(line, args));
    }

    /** Takes {@code --help sweep} for {@code sweep --help}, and {@code sweep --version} for {@code --version}. */
    private static String[] inOrder(CommandLine line, String[] args) {
        if (args.length != 2) {
            return args;
        }
        if (List.of("-h", "--help").contains(args[0]) && line.getSubcommands().containsKey(args[1])) {
            return new String[] {args[1], args[0]};
        }
        boolean version = List.of("-V", "--version").contains(args[1]);
        return version && line.getSubcommands().containsKey(args[0]) ? new String[] {args[1]} : args;
    }

    private static int badArguments(ParameterException e, String[] args) {
        String line = new InputException(String.valueOf(e.getMessage())).getMessage();
        e.getCommandLine().getErr().println(line + " (see --help)");
        return ExitCode.USAGE;
    }

    private static int failed(Exception e, CommandLine line, CommandLine.ParseResult parsed) throws Exception {
        if (e instanceof InputException) {
            line.getErr().println(e.getMessage());
            return ExitCode.USAGE;
        }
        throw e;
    }
}
