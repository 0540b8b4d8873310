package org.lifeline.examples.print;

import java.util.List;
import org.lifeline.examples.arrests.DesignRun;
import org.lifeline.examples.criteria.CriterionResult;
import org.lifeline.examples.json.DesignFile;

/**
 * Prints a calculation that a reviewer can follow: inputs as given, the installed state, every arrest with its accounts,
 * what governs, criteria, warnings, assumptions, cautions.
 *
 * <p>Immutable and thread-safe.
 */
public final class AnalysisPrinter {
    private final DesignFile file;
    private final UnitChoice units;

    /**
     * A printer for one design file.
     *
     * @param file the design as it was read
     * @param units in which units results are printed
     */
    public AnalysisPrinter(DesignFile file, UnitChoice units) {
        this.file = file;
        this.units = units;
    }

    /**
     * The calculation as text.
     *
     * @param run what was computed
     * @param criteria what came out for the criteria
     * @return lines of text, each ended by a line feed
     */
    public String print(DesignRun run, List<CriterionResult> criteria) {
        Sheet sheet = new Sheet();
        sheet.line("Calculation of a horizontal lifeline");
        sheet.line(Inert.of(run.design().title()));
        sheet.line("design file SHA-256 " + file.sha256());
        GivenSection.print(sheet, file);
        ArrestSection.formulas(sheet);
        new LineSection(units).print(sheet, run);
        new ArrestSection(units).print(sheet, run);
        SummarySection summary = new SummarySection(units);
        summary.governing(sheet, run);
        summary.criteria(sheet, criteria);
        NotesSection notes = new NotesSection(units);
        notes.warnings(sheet, run);
        notes.assumptions(sheet, file, run);
        NotesSection.cautions(sheet);
        return sheet.toString();
    }
}
