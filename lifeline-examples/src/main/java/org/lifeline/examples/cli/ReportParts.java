package org.lifeline.examples.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.lifeline.analysis.ArrestResult;
import org.lifeline.file.output.OutputException;
import org.lifeline.file.output.OutputFolder;
import org.lifeline.report.CsvReport;
import org.lifeline.report.document.ReportBlock;
import org.lifeline.report.document.ReportDocument;
import org.lifeline.report.document.ReportSection;
import org.lifeline.report.document.UnitChoice;

/**
 * Writes the parts of a report as files of their own: tables and calculations as CSV, pictures as SVG. Names of files are
 * numbers, since titles are not to be trusted; an index says what they hold.
 */
final class ReportParts {
    private final OutputFolder folder;
    private final List<ReportBlock.Row> index = new ArrayList<>();

    ReportParts(OutputFolder folder) {
        this.folder = folder;
    }

    void write(ReportDocument document, List<ArrestResult> arrests, UnitChoice units) throws OutputException {
        int tables = 0;
        int pictures = 0;
        for (ReportSection section : document.sections()) {
            for (ReportBlock block : section.blocks()) {
                if (block instanceof ReportBlock.Table t) {
                    tables++;
                    folder.put(String.format(Locale.ROOT, "table-%03d.csv", tables), CsvReport.writeTable(t));
                    list(String.format(Locale.ROOT, "table-%03d.csv", tables), section.title(), t.caption());
                } else if (block instanceof ReportBlock.Figure f) {
                    pictures++;
                    String name = String.format(Locale.ROOT, "picture-%03d.svg", pictures);
                    folder.put(name, f.picture().svg());
                    list(name, section.title(), f.picture().title());
                    if (!f.picture().data().rows().isEmpty()) {
                        String numbers = String.format(Locale.ROOT, "picture-%03d.csv", pictures);
                        folder.put(numbers, CsvReport.writeTable(f.picture().data()));
                        list(
                                numbers,
                                section.title(),
                                "Numbers of " + f.picture().title());
                    }
                }
            }
        }
        for (int i = 0; i < arrests.size(); i++) {
            String name = String.format(Locale.ROOT, "calculation-%03d.csv", i + 1);
            folder.put(name, CsvReport.writeCalculation(arrests.get(i).explainIn(units.leading())));
            list(name, "Arrest " + (i + 1), "Calculation line by line, unrounded");
        }
        List<ReportBlock.Column> columns = List.of(
                new ReportBlock.Column("file", false),
                new ReportBlock.Column("section", false),
                new ReportBlock.Column("holds", false));
        folder.put(OutputFolder.INDEX, CsvReport.writeTable(new ReportBlock.Table("index", columns, index)));
    }

    private void list(String name, String section, String caption) {
        index.add(new ReportBlock.Row(List.of(name, section, caption), false));
    }
}
