package org.lifeline.examples.print;

import java.util.Locale;
import org.lifeline.analysis.ArrestResult;
import org.lifeline.analysis.motion.MeshRun;
import org.lifeline.analysis.motion.MotionPeaks;
import org.lifeline.analysis.motion.MotionSummary;
import org.lifeline.analysis.motion.WorkerPeaks;

/** What stands behind an arrest in time: the mesh, the drift, the peaks after the first catch. */
final class MotionLines {
    private final UnitChoice units;

    MotionLines(UnitChoice units) {
        this.units = units;
    }

    void print(Sheet sheet, ArrestResult r, MotionSummary m) {
        MeshRun run = m.mesh();
        sheet.line(String.format(
                Locale.ROOT,
                "  mesh: segments of %.3f m where somebody falls, %d nodes; peaks changed by %s when mesh and step were"
                        + " halved last (asked for: %.1f %%)",
                run.mesh().segmentLength(),
                run.mesh().nodes(),
                Double.isFinite(run.spread()) ? String.format(Locale.ROOT, "%.1f %%", 100 * run.spread()) : "?",
                100 * r.convergence().tolerance()));
        sheet.line(String.format(
                Locale.ROOT, "  energy drift: %.4f %% of the energy of the fall", 100 * m.relativeDrift()));
        MotionPeaks whole = m.wholeRun();
        sheet.line(String.format(
                Locale.ROOT,
                "  whole run: tension %s at %.3f s",
                Measure.FORCE.text(whole.tension().value(), units),
                whole.tension().time()));
        for (WorkerPeaks each : whole.workers()) {
            sheet.line(String.format(
                    Locale.ROOT,
                    "  whole run, %s: force %s at %.3f s, harness attachment down to elevation %s at %.3f s",
                    Inert.of(each.id()),
                    Measure.FORCE.text(each.force().value(), units),
                    each.force().time(),
                    Measure.LENGTH.text(each.lowest().value(), units),
                    each.lowest().time()));
        }
    }
}
