package org.lifeline.examples.cli;

import java.io.IOException;
import java.io.InputStream;
import java.io.PrintStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import org.lifeline.analysis.ArrestResult;
import org.lifeline.analysis.TransientArrest;
import org.lifeline.analysis.TransientResult;
import org.lifeline.base.InertText;
import org.lifeline.base.InvalidInputException;
import org.lifeline.base.NoEquilibriumException;
import org.lifeline.base.ProgressListener;
import org.lifeline.design.assessment.Assessment;
import org.lifeline.design.assessment.AssessmentResult;
import org.lifeline.design.envelope.DesignAnalysis;
import org.lifeline.design.handover.Handover;
import org.lifeline.design.handover.HandoverResult;
import org.lifeline.examples.print.DesignReport;
import org.lifeline.file.DesignFile;
import org.lifeline.file.DesignReader;
import org.lifeline.file.LibraryVersion;
import org.lifeline.file.output.FileKind;
import org.lifeline.file.output.Output;
import org.lifeline.file.output.OutputException;
import org.lifeline.file.output.OutputFolder;
import org.lifeline.file.output.OutputSet;
import org.lifeline.file.result.DesignRun;
import org.lifeline.model.LifelineDesign;
import org.lifeline.report.CalculationReport;
import org.lifeline.report.HtmlReport;
import org.lifeline.report.TextReport;
import org.lifeline.report.document.Paper;
import org.lifeline.report.document.ProjectData;
import org.lifeline.report.document.Provenance;
import org.lifeline.report.document.ReportDetail;
import org.lifeline.report.document.ReportDocument;
import org.lifeline.report.document.UnitChoice;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Computes a design and writes the calculation report with every step and pictures. Not thread-safe. */
@Command(
        name = "report",
        description = {
            "Computes a design and writes the calculation report: what governs, criteria, all arrests,",
            "the envelope along the line, what governs in pictures, in time and line by line."
        },
        footer = {"", "Exit codes: 0 done, 2 bad file or command line, 3 no equilibrium found, 1 fault of the program."
        },
        mixinStandardHelpOptions = false,
        sortOptions = false)
public final class ReportCommand implements Callable<Integer> {
    private static final Map<String, ReportDetail> DETAILS =
            Map.of("short", ReportDetail.SHORT, "governing", ReportDetail.GOVERNING, "full", ReportDetail.FULL);

    private static final Map<String, Paper> PAPERS = Map.of("a4", Paper.A4, "letter", Paper.LETTER);

    private final PrintStream out;
    private final PrintStream err;
    private final Failures failures;

    @Parameters(paramLabel = "FILE", description = "Design file (JSON, org.lifeline.design/1).")
    private @Nullable Path file;

    @Option(names = "--html", paramLabel = "FILE", description = "Writes the report as one HTML file.")
    private @Nullable String html;

    @Option(
            names = "--text",
            paramLabel = "FILE",
            description = "Writes the report as text; without --html, --text and --parts it is printed.")
    private @Nullable String text;

    @Option(
            names = "--parts",
            paramLabel = "FOLDER",
            description =
                    "Writes every table, and the calculation of every arrest with unrounded numbers, as CSV, and every"
                            + " picture as SVG; index.csv says what is what.")
    private @Nullable String parts;

    @Option(names = "--overwrite", description = "Replaces also files that are no former reports; never a design.")
    private boolean overwrite;

    @Option(names = "--units", paramLabel = "UNITS", defaultValue = "both", description = "Units: both, si or us.")
    private String units = "both";

    @Option(
            names = "--detail",
            paramLabel = "DETAIL",
            defaultValue = "governing",
            description = "How much of each arrest is shown: short (tables), governing (in full what governs) or"
                    + " full (every arrest, each line by line).")
    private String detail = "governing";

    @Option(
            names = "--paper",
            paramLabel = "SIZE",
            defaultValue = "a4",
            description = "Paper on which the report is printed: a4 or letter.")
    private String paper = "a4";

    @Option(names = "--datasheet", description = "Writes the data sheet for the line, one page, instead of the report.")
    private boolean dataSheet;

    @Option(names = "--no-envelope", description = "Leaves out the envelope along the line.")
    private boolean noEnvelope;

    @Option(
            names = "--no-transient",
            description = "Does not follow in time the arrests that govern the end anchor load and the clearance.")
    private boolean noTransient;

    @Option(names = "--date", paramLabel = "TEXT", defaultValue = "", description = "Date of issue to be printed.")
    private String date = "";

    @Option(names = "--by", paramLabel = "NAME", defaultValue = "", description = "Who prepared it.")
    private String by = "";

    @Option(names = "--stack-trace", description = "Shows where the program failed, for a report of a fault.")
    private boolean stackTrace;

    /**
     * The command with its streams.
     *
     * @param out where the report goes
     * @param err where everything else goes
     */
    public ReportCommand(PrintStream out, PrintStream err) {
        this.out = out;
        this.err = err;
        this.failures = new Failures(err);
    }

    @Override
    public Integer call() {
        UnitChoice choice = DesignReport.units(units);
        ReportDetail much = DETAILS.get(detail);
        if (file == null || choice == null || much == null || !PAPERS.containsKey(paper)) {
            err.println("Bad command line: "
                    + (choice == null
                            ? "--units " + InertText.plain(units) + ": must be both, si or us"
                            : much == null
                                    ? "--detail " + InertText.plain(detail) + ": must be short, governing or full"
                                    : "--paper " + InertText.plain(paper) + ": must be a4 or letter"));
            return ExitCode.BAD_INPUT;
        }
        if (dataSheet && noEnvelope) {
            err.println("Bad command line: --datasheet is drawn from the envelope that --no-envelope leaves out");
            return ExitCode.BAD_INPUT;
        }
        byte[] bytes;
        try (InputStream in = Files.newInputStream(file)) {
            bytes = in.readNBytes(DesignReader.LARGEST_FILE + 1);
        } catch (IOException e) {
            err.println(
                    "The design file cannot be read: " + InertText.plain(file.toString()) + ": " + Failures.reason(e));
            return ExitCode.BAD_INPUT;
        }
        try {
            DesignFile design = new DesignReader().read(bytes);
            if (!noEnvelope && design.exceededByWholeLine().isPresent()) {
                return failures.violations(
                        file.toString(), List.of(design.exceededByWholeLine().get()));
            }
            try (OutputSet outputs = OutputSet.of(overwrite, file)) {
                Output page = html == null ? null : outputs.claim(html, FileKind.REPORT_PAGE);
                Output plain = text == null ? null : outputs.claim(text, FileKind.REPORT_TEXT);
                OutputFolder folder = parts == null ? null : outputs.claimFolder(parts);
                Drawn drawn = report(design, choice, much);
                if (page != null) {
                    page.put(HtmlReport.write(drawn.document()));
                }
                if (plain != null) {
                    plain.put(TextReport.write(drawn.document()));
                }
                if (folder != null) {
                    new ReportParts(folder).write(drawn.document(), drawn.arrests(), drawn.units());
                }
                outputs.commit();
                if (html == null && text == null && parts == null) {
                    out.print(TextReport.write(drawn.document()));
                    out.flush();
                }
                return ExitCode.DONE;
            } catch (InvalidInputException e) {
                return failures.violations(file.toString(), Failures.asWritten(design, e.violations()));
            }
        } catch (InvalidInputException e) {
            return failures.violations(file.toString(), e.violations());
        } catch (NoEquilibriumException e) {
            return failures.noEquilibrium(e);
        } catch (OutputException e) {
            return failures.output(e);
        } catch (RuntimeException | StackOverflowError | OutOfMemoryError e) {
            return failures.fault(e, stackTrace);
        }
    }

    /** The assessment, with arrests in time unless they are left out. */
    private AssessmentResult assess(DesignFile design, ProgressListener progress) {
        try (Workers workers = Workers.begin()) {
            Assessment assessment = Assessment.withDefaults()
                    .withCriteria(design.criteria())
                    .withBasis(design.basis())
                    .withProgress(progress)
                    .withExecutor(workers);
            return (noTransient ? assessment.withoutMotion() : assessment).solve(design.design());
        }
    }

    /** A report and the arrests that it is about. */
    private record Drawn(ReportDocument document, List<ArrestResult> arrests, UnitChoice units) {}

    private Drawn report(DesignFile design, UnitChoice choice, ReportDetail much) {
        Progress progress = new Progress(err, System::nanoTime);
        Optional<AssessmentResult> assessment = noEnvelope ? Optional.empty() : Optional.of(assess(design, progress));
        DesignRun run = assessment.isPresent()
                ? DesignRun.of(assessment.get().stated())
                : DesignRun.of(design.design(), DesignAnalysis.withDefaults().withProgress(progress));
        List<TransientResult> motions = new ArrayList<>();
        List<String> remarks = new ArrayList<>();
        if (!noTransient && !dataSheet) {
            for (int number : CalculationReport.of(run.design(), run.arrests()).calculated()) {
                try {
                    motions.add(inTime(run.design(), run.arrests().get(number - 1)));
                } catch (InvalidInputException | NoEquilibriumException e) {
                    remarks.add(String.format(
                            Locale.ROOT, "Arrest %d could not be followed in time: %s.", number, e.getMessage()));
                }
            }
        }
        CalculationReport report = DesignReport.of(design, run, choice, remarks)
                .withDetail(much)
                .withProject(project(design))
                .withPaper(PAPERS.getOrDefault(paper, Paper.A4))
                .withMotions(motions)
                .withProvenance(new Provenance("Lifeline " + LibraryVersion.text(), design.sha256(), date, by));
        if (assessment.isPresent()) {
            report = report.withAssessment(assessment.get());
            HandoverResult handover = Handover.of(design.handover()).solve(assessment.get());
            if (dataSheet) {
                return new Drawn(report.withHandover(handover).buildDataSheet(), List.of(), choice);
            }
            report = design.handover().isEmpty() ? report : report.withHandover(handover);
        }
        remarks.forEach(r -> err.println(InertText.plain(r)));
        return new Drawn(report.build(), run.arrests(), choice);
    }

    /** The project of the file; what the command line says of date and author goes before what the file says. */
    private ProjectData project(DesignFile design) {
        ProjectData data = design.project();
        if (data.isEmpty()) {
            return data;
        }
        data = date.isBlank() ? data : data.with(ProjectData.Item.DATE, date);
        return by.isBlank() ? data : data.with(ProjectData.Item.PREPARED_BY, by);
    }

    private static TransientResult inTime(LifelineDesign design, ArrestResult balance) {
        return TransientArrest.withDefaults()
                .withTemperature(balance.temperature())
                .withSide(balance.side())
                .withClearance(design.clearance())
                .solve(balance.line(), balance.fall());
    }
}
