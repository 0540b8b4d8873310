package org.lifeline.report.section;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.lifeline.analysis.ArrestResult;
import org.lifeline.model.LifelineDesign;
import org.lifeline.report.CalculationReport;
import org.lifeline.report.Hostile;
import org.lifeline.report.HtmlReport;
import org.lifeline.report.ReportSamples;
import org.lifeline.report.TextReport;
import org.lifeline.report.Xml;
import org.lifeline.report.document.Paper;
import org.lifeline.report.document.ProjectData;
import org.lifeline.report.document.ProjectData.Item;
import org.lifeline.report.document.ReportDetail;
import org.lifeline.report.document.ReportDocument;
import org.lifeline.report.document.ReportSection;
import org.lifeline.samples.SampleDesigns;
import org.w3c.dom.Document;

/** The project block, and the marks on every page. */
class ProjectSectionTest {
    private static final LifelineDesign DESIGN = SampleDesigns.design("Gallery");
    private static final List<ArrestResult> ARRESTS = ReportSamples.arrests(DESIGN);

    private static ReportDocument report(ProjectData project, Paper paper) {
        return CalculationReport.of(DESIGN, ARRESTS)
                .withDetail(ReportDetail.SHORT)
                .withProject(project)
                .withPaper(paper)
                .build();
    }

    @Test
    void everyTextIsPrintedAndWhatIsOpenIsABlank() {
        ProjectData data = ProjectData.none();
        for (Item each : Item.values()) {
            data = data.with(each, "text of " + each.key());
        }
        data = data.with(new ProjectData.Revision("C", "1 May 2026", "posts moved", "designer"));
        String text = TextReport.write(report(data, Paper.A4)).replaceAll("\\s+", " ");
        for (Item each : Item.values()) {
            assertThat(text).contains(each.label() + " text of " + each.key());
        }
        assertThat(text).contains("C 1 May 2026 posts moved designer");
        String open = TextReport.write(report(ProjectData.none().with(Item.CLIENT, "client"), Paper.A4));
        assertThat(open).contains("Approved by").contains("____");
        assertThat(report(ProjectData.none(), Paper.A4).sections())
                .extracting(ReportSection::title)
                .doesNotContain("Project");
    }

    @Test
    void documentRevisionPaperAndPageNumberStandInTheMargin() {
        ProjectData data = ProjectData.none().with(Item.DOCUMENT, "FM-LL 001").with(Item.REVISION, "B2");
        String html = HtmlReport.write(report(data, Paper.LETTER));
        assertThat(html)
                .contains("@page{size:letter;")
                .contains("FM\\2d LL 001\\2c  rev\\2e  B2")
                .contains("counter(page) \" of \" counter(pages)")
                .contains("computed\\2c  not approved");
        assertThat(HtmlReport.write(report(data, Paper.A4))).contains("@page{size:A4;");
    }

    @Test
    void hostileProjectsComeOutInert() {
        for (String hostile : Hostile.texts()) {
            ProjectData data = ProjectData.none();
            for (Item each : Item.values()) {
                data = data.with(each, hostile);
            }
            data = data.with(new ProjectData.Revision(hostile, hostile, hostile, hostile));
            String html = HtmlReport.write(report(data, Paper.A4));
            Document d = Xml.parse(html.replace("<!DOCTYPE html>\n", ""));
            assertThat(Xml.all(d, "script")).isEmpty();
            assertThat(Xml.all(d, "img")).isEmpty();
            assertThat(Xml.all(d, "style").get(0).getTextContent()).doesNotContain("url(", "@import", "probe.invalid");
        }
    }

    @Test
    void emptyMeansThatNothingIsKnown() {
        assertThat(ProjectData.none().isEmpty()).isTrue();
        assertThat(ProjectData.none().with(Item.LINE, "  ").isEmpty()).isTrue();
        assertThat(ProjectData.none().with(Item.LINE, "1").isEmpty()).isFalse();
        assertThat(ProjectData.none()
                        .with(new ProjectData.Revision("A", "", "", ""))
                        .isEmpty())
                .isFalse();
    }
}
