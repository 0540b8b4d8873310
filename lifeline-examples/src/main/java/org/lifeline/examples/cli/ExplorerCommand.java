package org.lifeline.examples.cli;

import java.io.IOException;
import java.io.InputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import org.lifeline.base.InertText;
import org.lifeline.base.InvalidInputException;
import org.lifeline.explorer.ExplorerPage;
import org.lifeline.file.DesignReader;
import org.lifeline.file.LibraryVersion;
import org.lifeline.file.output.FileKind;
import org.lifeline.file.output.Output;
import org.lifeline.file.output.OutputException;
import org.lifeline.file.output.OutputSet;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Writes the page that computes a line in a browser. Not thread-safe. */
@Command(
        name = "explorer",
        description = {
            "Writes one HTML file that computes a line in a browser, live: no server, no network, no installation.",
            "It holds the design of FILE, or the demonstration design."
        },
        footer = {"", "Exit codes: 0 done, 2 bad file or command line, 1 fault of the program."},
        mixinStandardHelpOptions = false,
        sortOptions = false)
public final class ExplorerCommand implements Callable<Integer> {
    private final PrintStream out;
    private final PrintStream err;
    private final Failures failures;

    @Parameters(paramLabel = "FILE", arity = "0..1", description = "Design file (JSON, org.lifeline.design/1).")
    private @Nullable Path file;

    @Option(names = "--html", required = true, paramLabel = "PAGE", description = "Where the page goes.")
    private String html = "";

    @Option(names = "--overwrite", description = "Replaces also a file that is no former page; never a design.")
    private boolean overwrite;

    @Option(names = "--stack-trace", description = "Shows where the program failed, for a report of a fault.")
    private boolean stackTrace;

    /**
     * The command with its streams.
     *
     * @param out where the name of the page goes
     * @param err where everything else goes
     */
    public ExplorerCommand(PrintStream out, PrintStream err) {
        this.out = out;
        this.err = err;
        this.failures = new Failures(err);
    }

    @Override
    public Integer call() {
        try {
            return write();
        } catch (OutputException e) {
            return failures.output(e);
        } catch (RuntimeException | StackOverflowError | OutOfMemoryError e) {
            return failures.fault(e, stackTrace);
        }
    }

    private int write() throws OutputException {
        byte[] bytes;
        try {
            bytes = bytes();
        } catch (IOException e) {
            err.println("The design file cannot be read: " + InertText.plain(String.valueOf(file)) + ": "
                    + Failures.reason(e));
            return ExitCode.BAD_INPUT;
        }
        try {
            new DesignReader().read(bytes);
        } catch (InvalidInputException e) {
            return failures.violations(file == null ? "The demonstration design" : file.toString(), e.violations());
        }
        try (OutputSet outputs = file == null ? OutputSet.of(overwrite) : OutputSet.of(overwrite, file)) {
            Output place = outputs.claim(html, FileKind.EXPLORER_PAGE);
            String design = new String(bytes, StandardCharsets.UTF_8);
            String page = new ExplorerPage(LibraryVersion.text(), LibraryVersion.commit())
                    .write(design.startsWith("\uFEFF") ? design.substring(1) : design);
            place.put(page.getBytes(StandardCharsets.UTF_8));
            outputs.commit();
        }
        out.println("Page for a browser: " + InertText.plain(html));
        out.flush();
        return ExitCode.DONE;
    }

    private byte[] bytes() throws IOException {
        if (file != null) {
            try (InputStream in = Files.newInputStream(file)) {
                return in.readNBytes(DesignReader.LARGEST_FILE + 1);
            }
        }
        try (InputStream in = AnalyzeCommand.class.getResourceAsStream(AnalyzeCommand.DEMO)) {
            if (in == null) {
                throw new IllegalStateException("the demonstration design is missing from the program");
            }
            return in.readAllBytes();
        }
    }
}
