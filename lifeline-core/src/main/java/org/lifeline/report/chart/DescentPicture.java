package org.lifeline.report.chart;

import java.util.ArrayList;
import java.util.List;
import org.lifeline.analysis.ArrestResult;
import org.lifeline.analysis.LineEquilibrium;
import org.lifeline.analysis.Statics;
import org.lifeline.analysis.state.AppliedLoad;
import org.lifeline.model.Fall;
import org.lifeline.model.Lifeline;
import org.lifeline.model.absorber.LoadingCurve;
import org.lifeline.report.document.CaseNames;
import org.lifeline.report.document.Picture;
import org.lifeline.report.document.Quantities;
import org.lifeline.report.document.QuantityKind;
import org.lifeline.report.document.UnitChoice;

/**
 * Draws how the line answers the fall: the load and the end tensions against the descent of the attachment, and below them
 * the energies, whose lines meet where the fall is arrested.
 *
 * @since 1.0.0
 */
public final class DescentPicture {
    private static final int POINTS = 40;

    private DescentPicture() {}

    /**
     * Draws the picture of an arrest.
     *
     * @param arrest the arrest
     * @param choice the units
     * @return the picture
     */
    public static Picture draw(ArrestResult arrest, UnitChoice choice) {
        Fall fall = arrest.fall();
        Lifeline line = arrest.line();
        double g = line.gravity();
        List<AppliedLoad> hanging = new ArrayList<>();
        for (Fall.Hanging h : fall.hanging()) {
            hanging.add(new AppliedLoad(
                    h.place(), h.worker().attachment(), h.worker().mass() * g));
        }
        Statics statics = Statics.withDefaults().withTemperature(arrest.temperature());
        LoadingCurve curve = LoadingCurve.parallel(fall.fallers().stream()
                .map(w -> w.connection().curve(arrest.side(), arrest.temperature()))
                .toList());
        // The last point but one: the final load is reached. The last: the connection has deployed as far as it will.
        int n = POINTS + 1;
        double[] descent = new double[n + 1];
        double[] load = new double[n + 1];
        double[] first = new double[n + 1];
        double[] last = new double[n + 1];
        double[] free = new double[n + 1];
        for (int i = 0; i <= n; i++) {
            double share = i == 0 ? 1e-6 : Math.min(1, (double) i / POINTS);
            // More points where the line is soft.
            double force = arrest.lineLoad() * share * share;
            List<AppliedLoad> all = new ArrayList<>(hanging);
            all.add(new AppliedLoad(fall.place(), fall.fallers().get(0).attachment(), force));
            LineEquilibrium state = i >= POINTS ? arrest.peak() : statics.solve(line, all);
            double z = state.loads().get(all.size() - 1).point().z();
            descent[i] = arrest.attachmentBefore().z() - z;
            load[i] = force;
            first[i] = state.firstTension();
            last[i] = state.lastTension();
            double x = i == n ? arrest.deployment() : curve.nearExtension(force);
            free[i] = arrest.energy().fall()
                    - fall.fallingMass() * g * (arrest.lineDescent() - descent[i] + arrest.deployment() - x)
                    - curve.work(x);
        }
        double[] work = work(load, descent);
        String title = "Load, tension and energy against descent: " + CaseNames.name(arrest, Quantities.in(choice));
        Quantities q = Quantities.in(choice);
        String description = "The load on the line grows to " + q.result(QuantityKind.FORCE, arrest.lineLoad())
                + " while the attachment descends " + q.result(QuantityKind.LENGTH, arrest.lineDescent())
                + "; the line takes "
                + q.result(QuantityKind.ENERGY, arrest.energy().lineWork())
                + ", the hatched area W = ∫P dδ. "
                + (arrest.isBound()
                        ? "The energy left for the line falls below zero: those who fall together are not alike, and forces"
                                + " and distances are bounds on the safe side."
                        : "At that point the energy that the fall leaves for the line is used up; where that line drops at"
                                + " the end, the connecting subsystem deploys and takes the difference.");
        String firstId = line.supports().get(0).id();
        String lastId = line.supports().get(line.spans()).id();
        return ChartPicture.in(choice)
                .draw(
                        title,
                        description,
                        new ChartAxis("descent of the attachment", QuantityKind.LENGTH),
                        List.of(
                                ChartPanel.of(
                                        new ChartAxis("force", QuantityKind.FORCE),
                                        ChartSeries.of("load P on the line", descent, load)
                                                .shaded(),
                                        ChartSeries.of("tension at " + firstId, descent, first),
                                        ChartSeries.of("tension at " + lastId, descent, last)),
                                ChartPanel.of(
                                        new ChartAxis("energy", QuantityKind.ENERGY),
                                        ChartSeries.of("taken by the line", descent, work),
                                        ChartSeries.of("left for the line", descent, free))));
    }

    /** ∫P dδ by trapezoids. */
    private static double[] work(double[] load, double[] descent) {
        double[] w = new double[load.length];
        for (int i = 1; i < w.length; i++) {
            w[i] = w[i - 1] + 0.5 * (load[i] + load[i - 1]) * (descent[i] - descent[i - 1]);
        }
        return w;
    }
}
