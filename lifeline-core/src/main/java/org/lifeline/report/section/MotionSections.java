package org.lifeline.report.section;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.ToDoubleFunction;
import org.lifeline.analysis.ArrestResult;
import org.lifeline.analysis.TransientResult;
import org.lifeline.analysis.motion.EnergyHistory;
import org.lifeline.analysis.motion.EnergyHistory.Part;
import org.lifeline.analysis.motion.MeshRun;
import org.lifeline.analysis.motion.MotionPeaks;
import org.lifeline.analysis.motion.MotionSummary;
import org.lifeline.analysis.motion.Peak;
import org.lifeline.analysis.motion.PeakAllowances;
import org.lifeline.analysis.motion.SupportPeaks;
import org.lifeline.analysis.motion.WorkerPeaks;
import org.lifeline.base.InertText;
import org.lifeline.base.UnitSystem;
import org.lifeline.report.chart.HistoryPicture;
import org.lifeline.report.document.CaseNames;
import org.lifeline.report.document.Quantities;
import org.lifeline.report.document.QuantityKind;
import org.lifeline.report.document.ReportBlock;
import org.lifeline.report.document.ReportSection;
import org.lifeline.report.document.RoundedAccount;
import org.lifeline.report.document.TableBuilder;

/**
 * Writes down arrests in time: peaks beside the energy balance, energy account, accuracy, histories.
 *
 * @since 1.0.0
 */
public final class MotionSections {
    private static final Map<Part, String> PARTS = new LinkedHashMap<>();

    static {
        PARTS.put(Part.WORKER_MOTION, "Motion of the workers");
        PARTS.put(Part.CABLE_MOTION, "Motion of the cable");
        PARTS.put(Part.STRAIN, "Strain of the cable");
        PARTS.put(Part.WEIGHT, "Height of the cable's weight");
        PARTS.put(Part.ANCHORS, "Elastic anchors");
        PARTS.put(Part.CONNECTIONS, "Connecting subsystems");
        PARTS.put(Part.INLINE_ABSORBERS, "In-line energy absorbers");
        PARTS.put(Part.FRICTION, "Heat of friction and contact at the anchors");
        PARTS.put(Part.DAMPING, "Heat of the cable's internal damping");
        PARTS.put(Part.MESH, "Lost in the mesh beside anchors and travellers");
    }

    /** What the columns of forces mean. */
    private static final String FILTER =
            "The allowance is a bound of what ever finer meshes would add (appendix A.6). Behind 100 Hz: the same force through"
                    + " a low-pass filter, as laboratories record forces (recalled, not seen). Criteria read peak and allowance"
                    + " unless the engineer has chosen the filter.";

    private final Quantities q;

    /**
     * Sections in the units of a report.
     *
     * @param q the units
     */
    public MotionSections(Quantities q) {
        this.q = q;
    }

    /** A share with two digits. */
    static String percent(double share) {
        if (!Double.isFinite(share)) {
            return "an unknown share";
        }
        BigDecimal two = new BigDecimal(100 * share).round(new MathContext(2)).stripTrailingZeros();
        return QuantityKind.show(two.scale() < 0 ? two.setScale(0) : two) + " %";
    }

    /**
     * Writes the section of an arrest in time.
     *
     * @param t the arrest in time
     * @param pictures true to draw its histories
     * @return the section
     */
    public List<ReportSection> sections(TransientResult t, boolean pictures) {
        ArrestResult r = t.arrest();
        List<ReportBlock> blocks = new ArrayList<>();
        blocks.add(forces(r, t.firstCatch(), t.allowances()));
        blocks.add(new ReportBlock.Paragraph(FILTER));
        blocks.add(peaks(t));
        blocks.add(new ReportBlock.Paragraph(
                "The first catch lasts until all who fell hang slack after their lowest point, or"
                        + " begin to fall again; the whole run has rebounds and later falls in it. The ratio is that of the first"
                        + " catch to the energy balance: above 1 where the motion overshoots the static path."));
        blocks.add(energy(t));
        blocks.add(meshes(t));
        blocks.add(new ReportBlock.Paragraph(accuracy(t)));
        if (pictures) {
            blocks.add(new ReportBlock.Figure(HistoryPicture.draw(t, q.choice())));
        }
        return List.of(new ReportSection("In time: " + CaseNames.name(r, q), 1, blocks));
    }

    /**
     * A force in time.
     *
     * @param name what it is
     * @param peak the largest as it is [N]
     * @param filtered the largest behind the filter [N]
     * @param allowance what the mesh may hide of each
     */
    record ForceInTime(String name, double peak, double filtered, PeakAllowances.Force allowance) {}

    /** The forces of the first catch, each with what the mesh may hide of it, and behind the filter. */
    private ReportBlock forces(ArrestResult r, MotionPeaks filtered, PeakAllowances a) {
        List<ForceInTime> list = new ArrayList<>();
        list.add(new ForceInTime("Tension in the cable", r.maximumTension(), filtered.filteredTension(), a.tension()));
        list.add(new ForceInTime(
                "Largest arrest force on a worker",
                r.arrestForce(),
                filteredArrestForce(r, filtered),
                a.arrestForce()));
        r.supports()
                .forEach(s -> list.add(new ForceInTime(
                        "Load on " + InertText.name(s.id()),
                        s.force(),
                        filtered.support(s.id()).filteredForce(),
                        a.support(s.id()))));
        return forceTable(
                "Forces of the first catch, without model factors: as computed, with what finer meshes may add, and behind"
                        + " a filter",
                "Peak and allowance",
                list,
                f -> f.peak() + f.allowance().force());
    }

    /** The largest force behind the filter on one of those who fall [N]. */
    static double filteredArrestForce(ArrestResult r, MotionPeaks peaks) {
        return r.fall().fallers().stream()
                .mapToDouble(w -> peaks.worker(w.id()).filteredForce())
                .max()
                .orElseThrow();
    }

    /**
     * Forces in time in a table.
     *
     * @param caption what it shows
     * @param heading what the last column is
     * @param forces the rows
     * @param last the last column [N]
     * @return the table; where the last column is peak and allowance its rows add up as printed
     */
    ReportBlock forceTable(
            String caption, String heading, List<ForceInTime> forces, ToDoubleFunction<ForceInTime> last) {
        TableBuilder b = new TableBuilder(caption)
                .text("Force")
                .number("Peak")
                .number("Allowance of the mesh")
                .number("Behind 100 Hz")
                .number("Its allowance")
                .number(heading);
        for (ForceInTime f : forces) {
            double hidden = f.allowance().force();
            double sum = last.applyAsDouble(f);
            boolean known = Double.isFinite(hidden);
            b.row(
                    f.name(),
                    q.result(QuantityKind.FORCE, f.peak()),
                    known ? q.rest(QuantityKind.FORCE, f.peak() + hidden, f.peak()) : "not known",
                    q.result(QuantityKind.FORCE, f.filtered()),
                    known ? q.result(QuantityKind.FORCE, f.allowance().filteredForce()) : "not known",
                    known || Double.isFinite(sum) ? q.result(QuantityKind.FORCE, sum) : "not known");
        }
        return b.build();
    }

    private ReportBlock peaks(TransientResult t) {
        TableBuilder b = new TableBuilder("Peaks beside the energy balance")
                .text("Quantity")
                .number("Energy balance")
                .number("First catch")
                .number("Ratio")
                .number("At time")
                .number("Whole run")
                .number("At time in the whole run");
        MotionPeaks first = t.firstCatch();
        MotionPeaks whole = t.wholeRun();
        Optional<ArrestResult> balance = t.energyBalance();
        for (int k = 0; k < first.workers().size(); k++) {
            WorkerPeaks w = first.workers().get(k);
            String name = InertText.name(w.id());
            boolean falls = t.arrest().fall().fallers().stream().anyMatch(f -> f.id().equals(w.id()));
            boolean alone = falls && t.arrest().fall().fallers().size() == 1;
            row(
                    b,
                    "Force on " + name,
                    QuantityKind.FORCE,
                    new Peaks(
                            alone ? by(balance, ArrestResult::arrestForce) : OptionalDouble.empty(),
                            w.force(),
                            whole.workers().get(k).force()));
            row(
                    b,
                    "Lowest elevation of the harness attachment of " + name,
                    QuantityKind.LENGTH,
                    new Peaks(
                            OptionalDouble.empty(),
                            w.lowest(),
                            whole.workers().get(k).lowest()));
        }
        row(
                b,
                "Tension in the cable",
                QuantityKind.FORCE,
                new Peaks(by(balance, ArrestResult::maximumTension), first.tension(), whole.tension()));
        for (int i = 0; i < first.supports().size(); i++) {
            int support = i;
            SupportPeaks s = first.supports().get(i);
            row(
                    b,
                    "Load on " + InertText.name(s.id()),
                    QuantityKind.FORCE,
                    new Peaks(
                            by(balance, known -> known.supports().get(support).force()),
                            s.force(),
                            whole.supports().get(i).force()));
        }
        balance.ifPresent(known -> b.row(
                "Total fall distance",
                q.result(QuantityKind.LENGTH, known.totalFallDistance()),
                q.result(QuantityKind.LENGTH, t.arrest().totalFallDistance()),
                ratio(t.arrest().totalFallDistance(), known.totalFallDistance()),
                "–",
                "–",
                "–"));
        return b.build();
    }

    private static OptionalDouble by(Optional<ArrestResult> balance, ToDoubleFunction<ArrestResult> value) {
        return balance.stream().mapToDouble(value).findFirst();
    }

    /** One quantity by both methods. */
    private record Peaks(OptionalDouble balance, Peak first, Peak whole) {}

    private void row(TableBuilder b, String name, QuantityKind m, Peaks p) {
        b.row(
                name,
                p.balance().isPresent() ? q.result(m, p.balance().getAsDouble()) : "–",
                q.result(m, p.first().value()),
                p.balance().isPresent() ? ratio(p.first().value(), p.balance().getAsDouble()) : "–",
                q.result(QuantityKind.TIME, p.first().time()),
                q.result(m, p.whole().value()),
                q.result(QuantityKind.TIME, p.whole().time()));
    }

    private String ratio(double value, double to) {
        return to > 0 ? q.result(QuantityKind.RATIO, value / to) : "–";
    }

    private ReportBlock energy(TransientResult t) {
        EnergyHistory e = t.history().energies();
        double[] times = t.history().times();
        String faller = t.arrest().hardestArrested().id();
        int lowest = nearest(times, t.firstCatch().worker(faller).lowest().time());
        int[] at = {lowest, times.length - 1};
        TableBuilder b = new TableBuilder("Energy account: at the lowest point, after "
                        + q.result(QuantityKind.TIME, times[at[0]]) + ", and at the end of the run, after "
                        + q.result(QuantityKind.TIME, times[at[1]]))
                .text("Taken up by");
        List<RoundedAccount> accounts = new ArrayList<>();
        for (UnitSystem s : q.choice().systems()) {
            for (int k = 0; k < at.length; k++) {
                b.number((k == 0 ? "Lowest point [" : "End [") + QuantityKind.ENERGY.unit(s) + "]");
                accounts.add(RoundedAccount.sum(parts(e, at[k]), QuantityKind.ENERGY, s));
            }
        }
        int number = 0;
        List<String> names = new ArrayList<>(PARTS.values());
        names.add("Not accounted for (drift of the integration)");
        for (String name : names) {
            List<String> cells = new ArrayList<>(List.of(name));
            for (RoundedAccount a : accounts) {
                cells.add(QuantityKind.show(a.rows().get(number)));
            }
            b.row(cells);
            number++;
        }
        List<String> cells = new ArrayList<>(List.of("Set free by the workers' descent"));
        accounts.forEach(a -> cells.add(QuantityKind.show(a.totals().get(0))));
        b.total(cells.toArray(new String[0]));
        return b.build();
    }

    private static List<Double> parts(EnergyHistory e, int at) {
        List<Double> list = new ArrayList<>();
        double left = 0.0 - e.of(Part.WORKER_WEIGHT)[at];
        for (Part part : PARTS.keySet()) {
            double value = e.of(part)[at];
            list.add(value);
            left -= value;
        }
        list.add(left);
        return list;
    }

    private static int nearest(double[] times, double time) {
        int best = 0;
        for (int i = 1; i < times.length; i++) {
            best = Math.abs(times[i] - time) < Math.abs(times[best] - time) ? i : best;
        }
        return best;
    }

    private ReportBlock meshes(TransientResult t) {
        TableBuilder b = new TableBuilder("Meshes, each with half the segment and step of the one before")
                .number("Segment")
                .number("Nodes")
                .number("Steps")
                .number("Arrest force")
                .number("Tension")
                .number("Lowest point of the harness attachment")
                .number("Largest change");
        for (MeshRun each : t.meshes()) {
            b.row(
                    q.result(QuantityKind.LENGTH, each.mesh().segmentLength()),
                    Long.toString(each.mesh().nodes()),
                    Long.toString(each.steps()),
                    q.result(QuantityKind.FORCE, each.peaks().arrestForce()),
                    q.result(QuantityKind.FORCE, each.peaks().tension()),
                    q.result(QuantityKind.LENGTH, each.peaks().lowest()),
                    Double.isFinite(each.spread()) ? percent(each.spread()) : "–");
        }
        return b.build();
    }

    private String accuracy(TransientResult t) {
        return "Accuracy: " + bound(t.uncertainty()) + " (" + (t.accurate() ? "within" : "NOT within") + " the "
                + percent(t.arrest().convergence().tolerance())
                + " asked for). Energy drift: " + percent(t.relativeDrift())
                + " of the energy of the fall. Damping time of the cable " + milliseconds(t.dampingTime())
                + ", last step " + milliseconds(t.timeStep()) + "."
                + (t.firstCatchOver() ? "" : " THE RUN ENDED BEFORE THE FIRST CATCH WAS OVER.");
    }

    private static String bound(double relative) {
        return Double.isFinite(relative)
                ? "by a measured bound, finer meshes change the peaks of the first catch by " + percent(relative)
                        + " at most"
                : "fewer than three meshes were followed, so nothing bounds what finer ones change";
    }

    private String milliseconds(double time) {
        return q.result(QuantityKind.RATIO, 1e3 * time) + " ms";
    }

    /** What stands behind an arrest in time of which only the summary is kept. */
    List<ReportBlock> summary(ArrestResult r, MotionSummary m) {
        MeshRun run = m.mesh();
        List<ReportBlock> blocks = new ArrayList<>();
        blocks.add(forces(r, m.wholeRun(), m.allowances()));
        blocks.add(new ReportBlock.Paragraph(
                FILTER + " Here the forces behind the filter are those of the whole run, rebounds included."));
        TableBuilder b = new TableBuilder("Peaks of the whole run, rebounds included")
                .text("Quantity")
                .number("Peak")
                .number("At time");
        MotionPeaks whole = m.wholeRun();
        peak(b, "Tension in the cable", QuantityKind.FORCE, whole.tension());
        for (WorkerPeaks w : whole.workers()) {
            peak(b, "Force on " + InertText.name(w.id()), QuantityKind.FORCE, w.force());
            peak(
                    b,
                    "Lowest elevation of the harness attachment of " + InertText.name(w.id()),
                    QuantityKind.LENGTH,
                    w.lowest());
        }
        for (SupportPeaks s : whole.supports()) {
            peak(b, "Load on " + InertText.name(s.id()), QuantityKind.FORCE, s.force());
        }
        blocks.add(b.build());
        blocks.add(new ReportBlock.Paragraph("Mesh: segments of "
                + q.result(QuantityKind.LENGTH, run.mesh().segmentLength()) + " where somebody falls, "
                + run.mesh().nodes() + " nodes; " + bound(m.allowances().relative()) + " (asked for: "
                + percent(r.convergence().tolerance()) + "). Energy drift: "
                + percent(m.relativeDrift())
                + " of the energy of the fall."));
        return blocks;
    }

    private void peak(TableBuilder b, String name, QuantityKind m, Peak p) {
        b.row(name, q.result(m, p.value()), q.result(QuantityKind.TIME, p.time()));
    }
}
