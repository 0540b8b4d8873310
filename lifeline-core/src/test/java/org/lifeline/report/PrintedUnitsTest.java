package org.lifeline.report;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.lifeline.analysis.ArrestResult;
import org.lifeline.analysis.TransientArrest;
import org.lifeline.analysis.TransientResult;
import org.lifeline.base.Interval;
import org.lifeline.design.criteria.Criteria;
import org.lifeline.design.envelope.DesignAnalysis;
import org.lifeline.design.envelope.DesignResult;
import org.lifeline.design.envelope.Envelope;
import org.lifeline.design.envelope.EnvelopeResult;
import org.lifeline.design.envelope.Tolerances;
import org.lifeline.report.document.ReportBlock;
import org.lifeline.report.document.ReportDetail;
import org.lifeline.report.document.ReportDocument;
import org.lifeline.report.document.ReportSection;
import org.lifeline.report.document.UnitChoice;
import org.lifeline.samples.SampleDesigns;

/**
 * Every quantity that a report prints in both systems is the same quantity, correct to the last printed digit of each.
 * Conversions stand here a second time, as exact fractions: yard and pound agreement of 1959 (0.3048 m to the foot,
 * 0.45359237 kg to the pound), standard gravity 9.80665 m/s² (3rd CGPM, 1901); see NIST SP 811, appendix B.
 */
class PrintedUnitsTest {
    private static final BigDecimal FOOT = new BigDecimal("0.3048");
    private static final BigDecimal POUND = new BigDecimal("0.45359237");
    private static final BigDecimal POUND_FORCE = POUND.multiply(new BigDecimal("9.80665"));
    private static final MathContext PRECISE = new MathContext(40);

    /** SI unit, then customary unit: what one of the first is in the second. */
    private static final Map<String, BigDecimal> FACTORS = factors();

    private static final Pattern PAIR = Pattern.compile(
            "(−?[0-9]+(?:\\.[0-9]+)?) ([^ ()0-9;,]+|1/°C) \\((−?[0-9]+(?:\\.[0-9]+)?) ([^ ()0-9;,]+|1/°F)\\)");

    private static Map<String, BigDecimal> factors() {
        BigDecimal one = BigDecimal.ONE;
        BigDecimal inch = FOOT.divide(new BigDecimal(12));
        Map<String, BigDecimal> map = new HashMap<>();
        map.put("kN lbf", new BigDecimal(1000).divide(POUND_FORCE, PRECISE));
        map.put("m ft", one.divide(FOOT, PRECISE));
        map.put("mm in", new BigDecimal("0.001").divide(inch, PRECISE));
        map.put("J ft·lbf", one.divide(FOOT.multiply(POUND_FORCE), PRECISE));
        map.put("kg lb", one.divide(POUND, PRECISE));
        map.put("kg/m lb/ft", FOOT.divide(POUND, PRECISE));
        map.put("N/m lbf/ft", FOOT.divide(POUND_FORCE, PRECISE));
        map.put("kN/m lbf/in", inch.multiply(new BigDecimal(1000)).divide(POUND_FORCE, PRECISE));
        map.put("1/°C 1/°F", new BigDecimal(5).divide(new BigDecimal(9), PRECISE));
        map.put("°C °F", new BigDecimal("1.8"));
        return map;
    }

    private static final DesignResult RESULT = DesignAnalysis.withDefaults().solve(SampleDesigns.design("Gallery"));
    private static final EnvelopeResult ENVELOPE = Envelope.withDefaults()
            .withIntervals(6)
            .withTolerances(Tolerances.none().withMass(Interval.of(70, 120)))
            .solve(RESULT.design());
    private static final TransientResult MOTION = motion();

    private static TransientResult motion() {
        ArrestResult r = RESULT.arrests().get(0);
        return TransientArrest.withDefaults()
                .withTemperature(r.temperature())
                .withSide(r.side())
                .withClearance(RESULT.design().clearance())
                .withSegmentLength(0.5)
                .withRefinements(1)
                .withDuration(1.2)
                .solve(r.line(), r.fall());
    }

    private static ReportDocument report(UnitChoice units) {
        return CalculationReport.of(RESULT.design(), RESULT.arrests())
                .withUnits(units)
                .withDetail(ReportDetail.FULL)
                .withCriteria(Criteria.check(Criteria.builtIn(), RESULT.extremes()))
                .withEnvelope(ENVELOPE)
                .withMotions(List.of(MOTION))
                .build();
    }

    /** Every text of a report, cell by cell, but for what criteria demand in the words and units of their sources. */
    private static List<String> texts(ReportDocument d) {
        List<String> list = new ArrayList<>();
        for (ReportSection s : d.sections()) {
            list.add(s.title());
            for (ReportBlock b : s.blocks()) {
                if (b instanceof ReportBlock.Paragraph p) {
                    list.add(p.text());
                } else if (b instanceof ReportBlock.Items i) {
                    list.addAll(i.items());
                } else if (b instanceof ReportBlock.Table t && !t.caption().startsWith("What the criteria demand")) {
                    list.add(t.caption());
                    t.rows().forEach(r -> list.addAll(r.cells()));
                }
            }
        }
        return list;
    }

    private static BigDecimal number(String text) {
        return new BigDecimal(text.replace('−', '-'));
    }

    /** Half a unit of the last printed digit. */
    private static BigDecimal half(BigDecimal printed) {
        return BigDecimal.ONE.movePointLeft(printed.scale()).divide(BigDecimal.valueOf(2));
    }

    private static void assertSame(BigDecimal si, BigDecimal customary, String units, String where) {
        BigDecimal factor = FACTORS.get(units);
        assertThat(factor).as("a conversion of %s in %s", units, where).isNotNull();
        BigDecimal offset = units.equals("°C °F") ? BigDecimal.valueOf(32) : BigDecimal.ZERO;
        BigDecimal off = si.multiply(factor).add(offset).subtract(customary).abs();
        // Both were rounded from the same quantity, each by half of its last digit at most.
        BigDecimal most = half(si).multiply(factor).add(half(customary));
        assertThat(off).as("%s: %s and %s %s", where, si, customary, units).isLessThanOrEqualTo(most);
    }

    @Test
    void everyPairIsOneQuantity() {
        Set<String> seen = new HashSet<>();
        int pairs = 0;
        for (String text : texts(report(UnitChoice.BOTH))) {
            Matcher m = PAIR.matcher(text);
            while (m.find()) {
                String units = m.group(2) + " " + m.group(4);
                assertSame(number(m.group(1)), number(m.group(3)), units, text);
                seen.add(units);
                pairs++;
            }
        }
        assertThat(seen).as("every kind of quantity is printed").containsExactlyInAnyOrderElementsOf(FACTORS.keySet());
        assertThat(pairs).isGreaterThan(1000);
    }

    @Test
    void columnsOfAccountsAreTheSameAccount() {
        int rows = 0;
        for (ReportSection s : report(UnitChoice.BOTH).sections()) {
            for (ReportBlock b : s.blocks()) {
                if (b instanceof ReportBlock.Table t) {
                    rows += columns(t);
                }
            }
        }
        assertThat(rows).isGreaterThan(100);
    }

    private static int columns(ReportBlock.Table t) {
        int rows = 0;
        for (int i = 0; i < t.columns().size(); i++) {
            String head = t.columns().get(i).heading();
            for (int k = i + 1; k < t.columns().size(); k++) {
                String other = t.columns().get(k).heading();
                String units = unit(head) + " " + unit(other);
                boolean same = head.replace(unit(head), "").equals(other.replace(unit(other), ""));
                if (same && (units.equals("m ft") || units.equals("J ft·lbf"))) {
                    for (ReportBlock.Row row : t.rows()) {
                        String si = row.cells().get(i);
                        if (!si.isEmpty()) {
                            BigDecimal a = number(si);
                            BigDecimal c = number(row.cells().get(k));
                            // Totals are sums of printed rows: their last digit may be off by one for each row.
                            BigDecimal slack = new BigDecimal(t.rows().size());
                            BigDecimal off = a.multiply(FACTORS.getOrDefault(units, BigDecimal.ZERO))
                                    .subtract(c)
                                    .abs();
                            assertThat(off)
                                    .as("%s: %s", t.caption(), row.cells())
                                    .isLessThanOrEqualTo(half(a).multiply(FACTORS.getOrDefault(units, BigDecimal.ONE))
                                            .add(half(c))
                                            .multiply(slack));
                            rows++;
                        }
                    }
                }
            }
        }
        return rows;
    }

    private static String unit(String heading) {
        int open = heading.indexOf('[');
        return open < 0 ? heading : heading.substring(open + 1, heading.length() - 1);
    }

    @Test
    void bothSystemsTogetherAreWhatEachSaysAlone() {
        List<String> both = texts(report(UnitChoice.BOTH));
        Set<String> si = new HashSet<>(texts(report(UnitChoice.SI)));
        Set<String> customary = new HashSet<>(texts(report(UnitChoice.US_CUSTOMARY)));
        int compared = 0;
        for (String text : both) {
            Matcher m = PAIR.matcher(text);
            if (m.matches()) {
                assertThat(si).contains(m.group(1) + " " + m.group(2));
                assertThat(customary).contains(m.group(3) + " " + m.group(4));
                compared++;
            }
        }
        assertThat(compared).isGreaterThan(500);
    }

    @Test
    void aReportInOneSystemHasNothingOfTheOther() {
        for (String text : texts(report(UnitChoice.US_CUSTOMARY))) {
            assertThat(PAIR.matcher(text).find()).as(text).isFalse();
            String own = text.replace("12 mm 6x19 steel core", "the cable");
            assertThat(own).doesNotContainPattern("[0-9] (kN|mm|J|kg|kg/m|N/m|kN/m|°C)\\b");
        }
        for (String text : texts(report(UnitChoice.SI))) {
            assertThat(text).doesNotContainPattern("[0-9] (ft|in|lbf|lb|ft·lbf|lb/ft|lbf/ft|lbf/in|°F)\\b(?! span)");
        }
    }
}
