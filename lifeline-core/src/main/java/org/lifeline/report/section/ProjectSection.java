package org.lifeline.report.section;

import java.util.ArrayList;
import java.util.List;
import org.lifeline.base.InertText;
import org.lifeline.report.document.ProjectData;
import org.lifeline.report.document.ProjectData.Item;
import org.lifeline.report.document.ReportBlock;
import org.lifeline.report.document.ReportSection;
import org.lifeline.report.document.TableBuilder;

/**
 * The project block of the first page: what the calculation belongs to, who answers for it, its revisions.
 *
 * @since 1.0.0
 */
public final class ProjectSection {
    private static final String OPEN = "________________";

    private ProjectSection() {}

    /**
     * Writes the section.
     *
     * @param project the project
     * @return the section, with blanks for whatever is open
     */
    public static ReportSection of(ProjectData project) {
        List<ReportBlock> blocks = new ArrayList<>();
        TableBuilder t = new TableBuilder("Project")
                .text("Item")
                .text("Entry")
                .text("Item")
                .text("Entry");
        Item[] items = Item.values();
        int half = (items.length + 1) / 2;
        for (int i = 0; i < half; i++) {
            Item left = items[i];
            List<String> cells = new ArrayList<>(List.of(left.label(), entry(project, left)));
            if (i + half < items.length) {
                cells.add(items[i + half].label());
                cells.add(entry(project, items[i + half]));
            } else {
                cells.addAll(List.of("", ""));
            }
            t.row(cells);
        }
        blocks.add(t.build());
        if (!project.revisions().isEmpty()) {
            TableBuilder r = new TableBuilder("Revisions")
                    .text("Revision")
                    .text("Date")
                    .text("What changed")
                    .text("By");
            for (ProjectData.Revision each : project.revisions()) {
                r.row(
                        InertText.name(each.revision()),
                        InertText.name(each.date()),
                        InertText.plain(each.description()),
                        InertText.name(each.by()));
            }
            blocks.add(r.build());
        }
        return new ReportSection("Project", 1, blocks);
    }

    private static String entry(ProjectData project, Item item) {
        String text = project.text(item);
        return text.isEmpty() ? OPEN : InertText.name(text);
    }
}
