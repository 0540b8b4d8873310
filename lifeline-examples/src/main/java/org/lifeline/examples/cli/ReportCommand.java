package org.lifeline.examples.cli;

import java.io.IOException;
import java.io.InputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import org.lifeline.base.InvalidInputException;
import org.lifeline.base.NoEquilibriumException;
import org.lifeline.examples.arrests.DesignRun;
import org.lifeline.examples.json.AtomicFile;
import org.lifeline.examples.json.DesignFile;
import org.lifeline.examples.json.DesignReader;
import org.lifeline.examples.print.Inert;
import org.lifeline.report.CalculationReport;
import org.lifeline.report.HtmlReport;
import org.lifeline.report.Provenance;
import org.lifeline.report.ReportDocument;
import org.lifeline.report.TextReport;
import org.lifeline.report.UnitChoice;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Computes a design and writes the calculation report with every step and pictures. Not thread-safe. */
@Command(
        name = "report",
        description = "Computes a design and writes the calculation report, with every step and pictures.",
        footer = {"", "Exit codes: 0 done, 2 bad file or command line, 3 no equilibrium found, 1 fault of the program."
        },
        mixinStandardHelpOptions = false,
        sortOptions = false)
public final class ReportCommand implements Callable<Integer> {
    private static final Map<String, UnitChoice> UNITS =
            Map.of("both", UnitChoice.BOTH, "si", UnitChoice.SI, "us", UnitChoice.US_CUSTOMARY);

    private final PrintStream out;
    private final PrintStream err;

    @Parameters(paramLabel = "FILE", description = "Design file (JSON, org.lifeline.design/1).")
    private @Nullable Path file;

    @Option(names = "--html", paramLabel = "FILE", description = "Writes the report as one HTML file.")
    private @Nullable Path html;

    @Option(
            names = "--text",
            paramLabel = "FILE",
            description = "Writes the report as text; without --html and --text it is" + " printed.")
    private @Nullable Path text;

    @Option(names = "--units", paramLabel = "UNITS", defaultValue = "both", description = "Units: both, si or us.")
    private String units = "both";

    @Option(names = "--no-steps", description = "Leaves out the calculation line by line.")
    private boolean noSteps;

    @Option(names = "--date", paramLabel = "TEXT", defaultValue = "", description = "Date of issue to be printed.")
    private String date = "";

    @Option(names = "--by", paramLabel = "NAME", defaultValue = "", description = "Who prepared it.")
    private String by = "";

    /**
     * The command with its streams.
     *
     * @param out where the report goes
     * @param err where everything else goes
     */
    public ReportCommand(PrintStream out, PrintStream err) {
        this.out = out;
        this.err = err;
    }

    @Override
    public Integer call() {
        UnitChoice choice = UNITS.get(units);
        if (file == null || choice == null) {
            err.println("Bad command line: --units " + Inert.of(units) + ": must be both, si or us");
            return ExitCode.BAD_INPUT;
        }
        byte[] bytes;
        try (InputStream in = Files.newInputStream(file)) {
            bytes = in.readNBytes(DesignReader.LARGEST_FILE + 1);
        } catch (IOException e) {
            err.println("The design file cannot be read: " + Inert.of(String.valueOf(e.getMessage())));
            return ExitCode.BAD_INPUT;
        }
        try {
            DesignFile design = new DesignReader().read(bytes);
            DesignRun run = DesignRun.of(design.design());
            ReportDocument document = CalculationReport.of(run.design(), run.arrests())
                    .withUnits(choice)
                    .withSteps(!noSteps)
                    .withProvenance(new Provenance("Lifeline " + LibraryVersion.text(), design.sha256(), date, by))
                    .build();
            return write(document);
        } catch (InvalidInputException e) {
            err.println(Inert.of(file.toString()) + " cannot be used:");
            e.violations().forEach(v -> err.println("  " + Inert.of(v.toString())));
            return ExitCode.BAD_INPUT;
        } catch (NoEquilibriumException e) {
            err.println("No equilibrium was found: " + Inert.of(e.where()));
            return ExitCode.NO_EQUILIBRIUM;
        } catch (IOException e) {
            err.println("The report could not be written: " + Inert.of(String.valueOf(e.getMessage())));
            return ExitCode.FAULT;
        }
    }

    private int write(ReportDocument document) throws IOException {
        if (html != null) {
            AtomicFile.write(html, HtmlReport.write(document).getBytes(StandardCharsets.UTF_8));
        }
        if (text != null) {
            AtomicFile.write(text, TextReport.write(document).getBytes(StandardCharsets.UTF_8));
        }
        if (html == null && text == null) {
            out.print(TextReport.write(document));
            out.flush();
        }
        return ExitCode.DONE;
    }
}
