package org.lifeline.file;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.lifeline.report.document.ProjectData;

/** Reads {@code project}: what the calculation belongs to and who answers for it, all of it optional. */
final class ProjectReader {
    private ProjectReader() {}

    static ProjectData read(Fields top) {
        Fields f = top.object("project");
        if (f == null) {
            return ProjectData.none();
        }
        ProjectData data = ProjectData.none();
        for (ProjectData.Item each : ProjectData.Item.values()) {
            data = data.with(each, orBlank(f.text(each.key())));
        }
        List<JsonNode> items = f.array("revisions");
        for (int i = 0; i < items.size(); i++) {
            Fields r = Fields.of(items.get(i), f.path("revisions") + "[" + i + "]", f.findings());
            if (r != null) {
                data = data.with(new ProjectData.Revision(
                        orBlank(r.requiredText("revision")),
                        orBlank(r.text("date")),
                        orBlank(r.text("description")),
                        orBlank(r.text("by"))));
                r.close();
            }
        }
        f.close();
        return data;
    }

    private static String orBlank(@Nullable String text) {
        return text == null ? "" : text;
    }
}
