package org.lifeline.report;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.math.BigDecimal;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.lifeline.analysis.ArrestResult;
import org.lifeline.model.LifelineDesign;
import org.lifeline.model.ModelFactors;
import org.lifeline.report.chart.ChartAxis;
import org.lifeline.report.chart.ChartSeries;
import org.lifeline.report.document.QuantityKind;
import org.lifeline.report.document.ReportBlock;
import org.lifeline.report.document.ReportDetail;
import org.lifeline.report.document.ReportDocument;
import org.lifeline.report.document.ReportSection;
import org.lifeline.report.document.UnitChoice;
import org.lifeline.samples.SampleDesigns;
import org.w3c.dom.Document;
import org.w3c.dom.Element;

/** What the report says, in every format and both systems. */
class CalculationReportTest {
    private static final ReportDocument BOTH = ReportSamples.document("Gallery", UnitChoice.BOTH);

    private static List<ReportBlock.Table> tables(ReportDocument d, String caption) {
        return d.sections().stream()
                .flatMap(s -> s.blocks().stream())
                .filter(ReportBlock.Table.class::isInstance)
                .map(ReportBlock.Table.class::cast)
                .filter(t -> t.caption().startsWith(caption))
                .toList();
    }

    @Test
    void sectionsAreThereAndCautionsLast() {
        List<String> titles = BOTH.sections().stream().map(ReportSection::title).toList();
        assertThat(titles)
                .containsSubsequence(
                        "System",
                        "Summary",
                        "Warnings",
                        "Inputs",
                        "Supports",
                        "Assumptions",
                        "Model factors",
                        "Arrests in tables",
                        "Installed state",
                        "Independent check",
                        "Not considered",
                        "Documents of the plan",
                        "Formulas",
                        "Symbols and terms",
                        "Cautions");
        assertThat(titles.get(titles.size() - 1)).isEqualTo("Cautions");
        assertThat(titles.stream().filter(t -> t.matches("Arrest \\d: .*force")))
                .hasSize(4);
        assertThat(TextReport.write(BOTH)).contains("a qualified person").doesNotContain("compliant");
    }

    @Test
    void accountsAddUpAsPrinted() {
        int accounts = 0;
        for (UnitChoice units : UnitChoice.values()) {
            for (ArrestResult r : SampleDesigns.arrests().values()) {
                LifelineDesign.Builder builder =
                        LifelineDesign.builder("x").line(r.line()).fall(r.fall());
                r.fall().fallers().forEach(builder::worker);
                r.fall().hanging().forEach(h -> builder.worker(h.worker()));
                LifelineDesign design = builder.build();
                ReportDocument d = CalculationReport.of(design, List.of(r))
                        .withUnits(units)
                        .build();
                ReportBlock.Table energy = tables(d, "Where the energy").get(0);
                for (int j = 1; j < energy.columns().size(); j++) {
                    BigDecimal sum = BigDecimal.ZERO;
                    for (ReportBlock.Row row : energy.rows()) {
                        BigDecimal value = number(row.cells().get(j));
                        if (row.total()) {
                            assertThat(value).isEqualByComparingTo(sum);
                            accounts++;
                        }
                        sum = sum.add(value);
                    }
                }
                ReportBlock.Table clearance = tables(d, "From the line down").get(0);
                for (int j = 1; j + 1 < clearance.columns().size(); j += 2) {
                    BigDecimal z = number(clearance.rows().get(0).cells().get(j + 1));
                    for (ReportBlock.Row row :
                            clearance.rows().subList(1, clearance.rows().size())) {
                        z = z.subtract(number(row.cells().get(j)));
                        assertThat(number(row.cells().get(j + 1))).isEqualByComparingTo(z);
                    }
                    accounts++;
                }
            }
        }
        assertThat(accounts).isGreaterThan(80);
    }

    private static BigDecimal number(String cell) {
        return new BigDecimal(cell.replace('−', '-'));
    }

    @Test
    void htmlIsWellFormedAndAccessible() {
        for (UnitChoice units : UnitChoice.values()) {
            String html = HtmlReport.write(ReportSamples.document("Gallery", units));
            Document d = Xml.parse(html.replace("<!DOCTYPE html>\n", ""));
            assertThat(d.getDocumentElement().getAttribute("lang")).isEqualTo("en");
            assertThat(Xml.all(d, "h1")).hasSize(1);
            assertThat(Xml.all(d, "script")).isEmpty();
            assertThat(Xml.all(d, "table")).isNotEmpty().allSatisfy(t -> {
                assertThat(t.getElementsByTagName("caption").getLength()).isEqualTo(1);
                assertThat(t.getElementsByTagName("th").getLength()).isPositive();
            });
            assertThat(Xml.all(d, "th"))
                    .allSatisfy(t -> assertThat(t.getAttribute("scope")).isIn("col", "row", "rowgroup"));
            assertThat(Xml.all(d, "svg")).hasSizeGreaterThanOrEqualTo(8).allSatisfy(s -> {
                assertThat(s.getAttribute("role")).isEqualTo("img");
                assertThat(s.getElementsByTagName("title").item(0).getTextContent())
                        .isNotBlank();
                assertThat(s.getElementsByTagName("desc").item(0).getTextContent())
                        .isNotBlank();
            });
            Set<String> ids = new HashSet<>();
            for (Element e : Xml.all(d, "*")) {
                String id = e.getAttribute("id");
                assertThat(id.isEmpty() || ids.add(id))
                        .as("id %s is used once", id)
                        .isTrue();
            }
        }
    }

    @Test
    void htmlNamesNothingOutsideItself() {
        String html = HtmlReport.write(BOTH).replace("http://www.w3.org/2000/svg", "");
        assertThat(html).doesNotContain("http:", "https:", "//www", "@import", "src=");
        assertThat(html)
                .contains("default-src 'none'")
                .contains("prefers-color-scheme:dark")
                .contains("@media print");
    }

    @Test
    void coloursHaveContrast() {
        // WCAG 2.1, success criterion 1.4.3: text at least 4.5 : 1.
        assertThat(Contrast.of("#14181c", "#ffffff")).isGreaterThan(7);
        assertThat(Contrast.of("#4a545d", "#ffffff")).isGreaterThan(4.5);
        assertThat(Contrast.of("#eef1f4", "#14181c")).isGreaterThan(7);
        assertThat(Contrast.of("#b4bdc5", "#14181c")).isGreaterThan(4.5);
        assertThat(Contrast.of("#0a4f8f", "#ffffff")).isGreaterThan(4.5);
        assertThat(Contrast.of("#8fc4ff", "#14181c")).isGreaterThan(4.5);
    }

    @Test
    void sameInputSameCharacters() {
        ReportDocument again = ReportSamples.document("Gallery", UnitChoice.BOTH);
        assertThat(HtmlReport.write(again)).isEqualTo(HtmlReport.write(BOTH));
        assertThat(TextReport.write(again)).isEqualTo(TextReport.write(BOTH));
    }

    @Test
    void hostileTitlesAndNamesComeOutInert() {
        for (String text : Hostile.texts()) {
            ReportDocument d = ReportSamples.named(text);
            String html = HtmlReport.write(d);
            Document parsed = Xml.parse(html.replace("<!DOCTYPE html>\n", ""));
            assertThat(Xml.all(parsed, "script")).isEmpty();
            assertThat(Xml.all(parsed, "img")).isEmpty();
            for (Element e : Xml.all(parsed, "*")) {
                for (int i = 0; i < e.getAttributes().getLength(); i++) {
                    assertThat(e.getAttributes().item(i).getNodeName()).doesNotStartWith("on");
                }
            }
            String plain = TextReport.write(d);
            assertThat(plain.codePoints().filter(c -> c != '\n')).allMatch(c -> c >= 0x20 && c != 0x7F);
            assertThat(plain.codePoints()).noneMatch(c -> Character.getType(c) == Character.FORMAT);
            assertThat(html.length()).isLessThan(2_000_000);
        }
    }

    @Test
    void modelFactorsAreShownBesideWhatWasComputed() {
        LifelineDesign base = SampleDesigns.design("factored");
        LifelineDesign.Builder b = LifelineDesign.builder("factored")
                .line(base.line())
                .worker(base.workers().get(0))
                .fall(base.falls().get(0))
                .clearance(base.clearance())
                .modelFactors(new ModelFactors(1.2, 1.1));
        LifelineDesign design = b.build();
        ReportDocument d = CalculationReport.of(design, ReportSamples.arrests(design))
                .withUnits(UnitChoice.SI)
                .withDetail(ReportDetail.SHORT)
                .build();
        ReportBlock.Table summary = tables(d, "Worst values over").get(0);
        assertThat(summary.columns()).extracting(ReportBlock.Column::heading).contains("With model factors");
        List<String> force = summary.rows().get(0).cells();
        double computed = Double.parseDouble(force.get(1).replace(" kN", ""));
        double factored = Double.parseDouble(force.get(2).replace(" kN", ""));
        assertThat(factored / computed).isBetween(1.1995, 1.2005);
    }

    @Test
    void aFactorBelowOneIsSaidFirst() {
        LifelineDesign base = SampleDesigns.design("factored");
        LifelineDesign design = LifelineDesign.builder("factored")
                .line(base.line())
                .worker(base.workers().get(0))
                .fall(base.falls().get(0))
                .modelFactors(new ModelFactors(0.9, 1, "drop tests of 2024"))
                .build();
        ReportDocument d = CalculationReport.of(design, ReportSamples.arrests(design))
                .withUnits(UnitChoice.SI)
                .withDetail(ReportDetail.SHORT)
                .build();
        String text = TextReport.write(d);
        assertThat(text).contains("drop tests of 2024");
        assertThat(text.indexOf("ATTENTION: a model factor is below 1"))
                .isBetween(0, text.indexOf("Worst values over"));
        assertThat(text.replaceAll("\\s+", " ")).contains("A model factor is below 1 (forces 0.9, distances 1)");
    }

    @Test
    void documentsOfThePlanAreFilledIn() {
        ReportBlock.Table t = tables(BOTH, "What the documents").get(0);
        String all = t.rows().stream().map(r -> String.join(": ", r.cells())).collect(Collectors.joining("\n"));
        assertThat(all)
                .contains("MAL")
                .contains("kN (")
                .contains("3 spans")
                .contains("85 kg")
                .contains("100 kg")
                .contains("−30 °C")
                .contains("to be stated by the engineer");
    }

    @Test
    void tablesAndCalculationsAsCsv() {
        ReportBlock.Table t = tables(BOTH, "Force of the line").get(0);
        String csv = CsvReport.writeTable(t);
        assertThat(csv.lines()).hasSize(1 + t.rows().size());
        ArrestResult r = SampleDesigns.arrests().values().iterator().next();
        String calculation = CsvReport.writeCalculation(r.explain());
        assertThat(calculation.lines()).hasSize(1 + r.explain().size());
        assertThat(calculation).startsWith("section,symbol,what,formula,numbers,value,unit,source\r\n");
        String series = CsvReport.writeSeries(
                new ChartAxis("time", QuantityKind.TIME),
                List.of(ChartSeries.of("a,b", new double[] {0, 1}, new double[] {2, Double.NaN})));
        assertThat(series).isEqualTo("series,time,value\r\n\"a,b\",0.0,2.0\r\n\"a,b\",1.0,\r\n");
    }

    @Test
    void arrestsOfAnotherLineAreRefused() {
        LifelineDesign design = SampleDesigns.design("x");
        ArrestResult other = SampleDesigns.arrests().values().stream()
                .filter(a -> a.supports().size() == 2)
                .findFirst()
                .orElseThrow();
        assertThat(other.supports().size()).isNotEqualTo(design.line().spans() + 1);
        assertThatIllegalArgumentException()
                .isThrownBy(() -> CalculationReport.of(design, List.of(other)))
                .withMessageContaining("arrests[0]");
    }

    @Test
    void aDesignWithoutFallsIsReportedToo() {
        LifelineDesign design = SampleDesigns.design("empty");
        String text = TextReport.write(CalculationReport.of(design, List.of()).build());
        assertThat(text).contains("No fall was analysed.").contains("Installed state");
    }
}
