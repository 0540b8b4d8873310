package org.lifeline.report.chart;

import java.util.ArrayList;
import java.util.List;
import org.lifeline.analysis.TransientResult;
import org.lifeline.analysis.motion.EnergyHistory;
import org.lifeline.analysis.motion.MotionHistory;
import org.lifeline.analysis.motion.SupportHistory;
import org.lifeline.analysis.motion.WorkerHistory;
import org.lifeline.base.InertText;
import org.lifeline.report.document.CaseNames;
import org.lifeline.report.document.Picture;
import org.lifeline.report.document.Quantities;
import org.lifeline.report.document.QuantityKind;
import org.lifeline.report.document.UnitChoice;

/**
 * Draws an arrest in time: forces, elevations, energies.
 *
 * @since 1.0.0
 */
public final class HistoryPicture {
    private static final int MOST_WORKERS = 3;

    private HistoryPicture() {}

    /**
     * Draws the histories of an arrest.
     *
     * @param result the arrest in time
     * @param choice the units
     * @return the picture
     */
    public static Picture draw(TransientResult result, UnitChoice choice) {
        MotionHistory h = result.history();
        Quantities q = Quantities.in(choice);
        String fall = CaseNames.name(result.arrest(), q);
        String description = "Largest tension "
                + q.result(QuantityKind.FORCE, result.firstCatch().tension().value()) + " at "
                + q.result(QuantityKind.TIME, result.firstCatch().tension().time()) + ", arrest force "
                + q.result(QuantityKind.FORCE, result.arrest().arrestForce())
                + " in the first catch. Time counts from the start of the fall. Energies count from there too: what the"
                + " workers lose in height the other parts take up.";
        return ChartPicture.in(choice)
                .draw(
                        "History of the arrest: " + fall,
                        description,
                        new ChartAxis("time since the start of the fall", QuantityKind.TIME),
                        List.of(forces(result, h), elevations(h), energies(h)));
    }

    private static ChartPanel forces(TransientResult result, MotionHistory h) {
        List<ChartSeries> list = new ArrayList<>();
        List<SupportHistory> supports = h.supports();
        SupportHistory first = supports.get(0);
        SupportHistory last = supports.get(supports.size() - 1);
        list.add(ChartSeries.of("load on " + InertText.name(first.id()), h.times(), first.force()));
        list.add(ChartSeries.of("load on " + InertText.name(last.id()), h.times(), last.force()));
        for (WorkerHistory w : workers(h)) {
            list.add(ChartSeries.of("on " + InertText.name(w.id()), h.times(), w.force()));
        }
        ChartPanel panel = new ChartPanel(new ChartAxis("force", QuantityKind.FORCE), list, List.of());
        return result.energyBalance()
                .map(b -> panel.with(ReferenceLine.level("end anchor, balance", b.endAnchorLoad())))
                .orElse(panel);
    }

    private static List<WorkerHistory> workers(MotionHistory h) {
        return h.workers().subList(0, Math.min(MOST_WORKERS, h.workers().size()));
    }

    private static ChartPanel elevations(MotionHistory h) {
        List<ChartSeries> list = new ArrayList<>();
        for (WorkerHistory w : workers(h)) {
            list.add(ChartSeries.of("line at " + InertText.name(w.id()), h.times(), w.lineZ()));
            list.add(ChartSeries.of("harness of " + InertText.name(w.id()), h.times(), w.z()));
        }
        return new ChartPanel(new ChartAxis("elevation", QuantityKind.LENGTH), list, List.of());
    }

    private static ChartPanel energies(MotionHistory h) {
        EnergyHistory e = h.energies();
        double[] lost = e.of(EnergyHistory.Part.WORKER_WEIGHT);
        for (int i = 0; i < lost.length; i++) {
            lost[i] = 0.0 - lost[i];
        }
        double[] cable = sum(
                e,
                EnergyHistory.Part.STRAIN,
                EnergyHistory.Part.WEIGHT,
                EnergyHistory.Part.CABLE_MOTION,
                EnergyHistory.Part.ANCHORS);
        double[] heat = sum(
                e,
                EnergyHistory.Part.INLINE_ABSORBERS,
                EnergyHistory.Part.FRICTION,
                EnergyHistory.Part.DAMPING,
                EnergyHistory.Part.MESH);
        return new ChartPanel(
                new ChartAxis("energy", QuantityKind.ENERGY),
                List.of(
                        ChartSeries.of("lost in height", h.times(), lost),
                        ChartSeries.of("motion of workers", h.times(), e.of(EnergyHistory.Part.WORKER_MOTION)),
                        ChartSeries.of("connecting subsystems", h.times(), e.of(EnergyHistory.Part.CONNECTIONS)),
                        ChartSeries.of("cable and anchors", h.times(), cable),
                        ChartSeries.of("heat of the line", h.times(), heat)),
                List.of());
    }

    private static double[] sum(EnergyHistory e, EnergyHistory.Part... parts) {
        double[] sum = e.of(parts[0]);
        for (int k = 1; k < parts.length; k++) {
            double[] each = e.of(parts[k]);
            for (int i = 0; i < sum.length; i++) {
                sum[i] += each[i];
            }
        }
        return sum;
    }
}
