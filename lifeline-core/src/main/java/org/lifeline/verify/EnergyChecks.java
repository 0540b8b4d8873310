package org.lifeline.verify;

import java.util.List;
import org.lifeline.analysis.state.EnergyAccount;
import org.lifeline.analysis.state.InlineAbsorberState;
import org.lifeline.analysis.state.LoadPosition;
import org.lifeline.base.Vector3;
import org.lifeline.model.InlineAbsorber;
import org.lifeline.model.Passage;
import org.lifeline.model.Stiffness;
import org.lifeline.model.Worker;
import org.lifeline.model.absorber.LoadingCurve;
import org.lifeline.verify.state.ArrestNumbers;
import org.lifeline.verify.state.CableIntegration;
import org.lifeline.verify.state.LoadingTable;
import org.lifeline.verify.state.StateNumbers;

/** The energy account, each row computed again from the states before and at the lowest point. */
final class EnergyChecks {
    private final ArrestNumbers arrest;
    private final StateNumbers installed;
    private final CableIntegration integration;
    private final CheckLog log;
    private final double scale;
    private final double rounding;

    EnergyChecks(ArrestNumbers arrest, StateNumbers installed, CableIntegration integration, CheckLog log) {
        this.arrest = arrest;
        this.installed = installed;
        this.integration = integration;
        this.log = log;
        this.scale = Math.max(fall(), CheckTolerances.LEAST_FALL * arrest.weight());
        this.rounding = rounding();
    }

    /**
     * What rounding leaves open in a difference of the cable's energies [J]: a share of what is stored, and what the
     * tension works on the last digits of the coordinates.
     */
    private double rounding() {
        double level = arrest.attachmentBefore().z();
        double stored = arrest.peak()
                .pieces()
                .map(integration::shape)
                .mapToDouble(s -> s.strainEnergy() + Math.abs(s.weightEnergy(level)))
                .sum();
        return CheckTolerances.STORED * stored
                + arrest.peak().lastDigits() * arrest.peak().largestTension();
    }

    void check() {
        EnergyAccount e = arrest.energy();
        row(Check.ENERGY_FALL, e.fall(), fall());
        double cable = cable(arrest.peak()) - cable(arrest.before());
        beyondRounding(Check.ENERGY_CABLE, e.cable(), cable, scale);
        row(Check.ENERGY_HANGING, e.hanging(), hanging());
        row(Check.ENERGY_ANCHORS, e.anchors(), anchors(arrest.peak()) - anchors(arrest.before()));
        row(Check.ENERGY_ABSORBERS, e.inlineAbsorbers(), absorbers(arrest.peak()) - absorbers(arrest.before()));
        row(Check.ENERGY_CONNECTION, e.connection(), connection());
        friction(e.friction());
        double taken = e.cable() + e.hanging() + e.friction() + e.inlineAbsorbers() + e.anchors();
        double all = taken + e.connection();
        // A bound may take more than the fall sets free, never less.
        double left = arrest.bound() ? Math.max(e.fall(), all) : e.fall();
        beyondRounding(Check.ENERGY_RESIDUAL, left, all, scale);
        if (!Double.isNaN(arrest.pathWork())) {
            beyondRounding(Check.PATH_WORK, arrest.pathWork(), taken, workScale(arrest));
        }
    }

    /** What errors of the work on the line are relative to [J]: that work, but not less than a share of the fall. */
    static double workScale(ArrestNumbers arrest) {
        double fall = Math.max(arrest.energy().fall(), CheckTolerances.LEAST_FALL * arrest.weight());
        return Math.max(Math.abs(arrest.energy().lineWork()), CheckTolerances.WORK_SHARE * fall);
    }

    /** A difference of large energies: what rounding leaves open is no error, unless it is so much that nothing could be. */
    private void beyondRounding(Check check, double value, double expected, double relativeTo) {
        if (rounding > CheckTolerances.LARGEST_ALLOWANCE * scale) {
            log.addNotCheckable(check, "fall", rounding / scale);
        } else {
            log.add(check, "fall", Deviation.over(Math.abs(value - expected), rounding) / relativeTo);
        }
    }

    private void row(Check check, double value, double expected) {
        log.add(check, "fall", Math.abs(value - expected) / scale);
    }

    /** Σ m g (h + δ + x) over those who fall [J]. */
    private double fall() {
        double sum = 0;
        for (int i = 0; i < arrest.fall().fallers().size(); i++) {
            Worker w = arrest.fall().fallers().get(i);
            double x = arrest.deployments().get(i);
            sum += w.mass() * (FallChecks.freeFall(arrest, w) + arrest.descent() + x);
        }
        return sum * arrest.peak().line().gravity();
    }

    private double cable(StateNumbers state) {
        double level = arrest.attachmentBefore().z();
        return state.pieces()
                .map(integration::shape)
                .mapToDouble(s -> s.strainEnergy() + s.weightEnergy(level))
                .sum();
    }

    private double hanging() {
        double sum = 0;
        List<LoadPosition> before = arrest.before().loads();
        for (int i = 0; i < before.size(); i++) {
            LoadPosition now = arrest.peak().loads().get(i);
            sum += before.get(i).force()
                    * (now.point().z() - before.get(i).point().z());
        }
        return sum;
    }

    /** Work of the line on its anchors since installation: mean force times displacement, for linear springs [J]. */
    private double anchors(StateNumbers state) {
        double sum = 0;
        for (int i = 0; i < state.supports().size(); i++) {
            Stiffness k = state.line().supports().get(i).stiffness();
            Vector3 then = installed.supports().get(i).vector();
            Vector3 u = state.supports().get(i).displacement();
            sum += spring(k.x(), then.x(), u.x()) + spring(k.y(), then.y(), u.y()) + spring(k.z(), then.z(), u.z());
        }
        return sum;
    }

    private static double spring(double k, double preload, double u) {
        return Double.isInfinite(k) ? 0 : (preload + 0.5 * k * u) * u;
    }

    private double absorbers(StateNumbers state) {
        double sum = 0;
        for (InlineAbsorberState each : state.absorbers()) {
            int support = AbsorberChecks.support(state, each.supportId());
            InlineAbsorber absorber =
                    state.line().supports().get(support).inlineAbsorber().orElseThrow();
            LoadingTable curve = new LoadingTable(absorber.curve(), integration.quadrature());
            double k = absorber.initialStiffness();
            double t = state.endTension(support);
            if (each.extension() >= curve.last().extension()) {
                sum += curve.work(each.extension()); // at its stop
                continue;
            }
            AbsorberChecks.Unloading at = AbsorberChecks.Unloading.of(curve, each.extension(), t, k);
            double given = (at.force() - t) * (at.force() + t) / (2 * k);
            sum += curve.work(at.from()) - given;
        }
        return sum;
    }

    private double connection() {
        double sum = 0;
        for (int i = 0; i < arrest.fall().fallers().size(); i++) {
            LoadingCurve curve = arrest.fall().fallers().get(i).connection().curve(arrest.side());
            sum += new LoadingTable(curve, integration.quadrature())
                    .work(arrest.deployments().get(i));
        }
        return sum;
    }

    private void friction(double heat) {
        boolean possible = false;
        boolean certain = false;
        for (int i = 1; i < arrest.peak().spans().size(); i++) {
            if (arrest.peak().line().supports().get(i).passage().kind() == Passage.Kind.FRICTION) {
                possible = true;
                double moved = arrest.peak().supports().get(i).slip()
                        - arrest.before().supports().get(i).slip();
                double turned = Math.min(turned(arrest.before(), i), turned(arrest.peak(), i));
                double heatOfSlip = Math.abs(moved) * Math.min(drag(arrest.before(), i), drag(arrest.peak(), i));
                certain |=
                        Math.abs(moved) > CheckTolerances.SLIP * arrest.peak().chordAt(i)
                                && turned > CheckTolerances.TURN
                                && heatOfSlip > Check.ENERGY_FRICTION.defaultLimit() * scale;
            }
        }
        log.add(Check.ENERGY_FRICTION, "sign", Deviation.over(0, heat) / scale);
        if (!possible) {
            log.add(Check.ENERGY_FRICTION, "no friction", Math.abs(heat) / scale);
        }
        if (certain) {
            log.add(Check.ENERGY_FRICTION, "slip against friction", heat > 0 ? 0 : 1);
        }
    }

    /** What a cable that slips over a support loses of its tension there [N]. */
    private static double drag(StateNumbers state, int support) {
        double lower = Math.min(
                state.tensionBefore(support).magnitude(),
                state.tensionBehind(support).magnitude());
        double mu = state.line().supports().get(support).passage().friction();
        return lower * StrictMath.expm1(mu * turned(state, support));
    }

    private static double turned(StateNumbers state, int support) {
        return state.tensionBefore(support).angleTo(state.tensionBehind(support));
    }
}
