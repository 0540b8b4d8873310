package org.lifeline.analysis.explain;

import static org.lifeline.analysis.explain.Expression.minus;
import static org.lifeline.analysis.explain.Expression.number;
import static org.lifeline.analysis.explain.Expression.over;
import static org.lifeline.analysis.explain.Expression.sum;
import static org.lifeline.analysis.explain.Expression.times;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.lifeline.analysis.ArrestResult;
import org.lifeline.analysis.LineEquilibrium;
import org.lifeline.analysis.state.EnergyAccount;
import org.lifeline.analysis.state.InlineAbsorberState;
import org.lifeline.analysis.state.LoadPosition;
import org.lifeline.base.unit.Dimension;
import org.lifeline.model.Support;
import org.lifeline.model.Worker;
import org.lifeline.model.absorber.AbsorberCondition;
import org.lifeline.model.absorber.LoadingCurve;

/** Writes down the energy balance of an arrest: what the line took, what the connection took, what the fall set free. */
final class BalanceExplanation {
    private static final String BOUND = "bound of the energy balance";
    private static final String SOLUTION = "solution of the energy balance";

    private final CalculationSheet sheet;
    private final ArrestResult arrest;

    BalanceExplanation(CalculationSheet sheet, ArrestResult arrest) {
        this.sheet = sheet;
        this.arrest = arrest;
    }

    /** Mass and free fall of one who falls. */
    record Faller(Figure mass, Figure freeFall) {}

    /** All who fall together: mass, free fall weighted by mass, and each by himself. */
    record Falling(Figure mass, Figure freeFall, List<Faller> each) {}

    /** What falls, and by how much it falls and the line descends. */
    record Drop(Falling falling, Figure gravity, Figure descent) {}

    /**
     * Writes the balance.
     *
     * @param before the line before the fall
     * @param peak the line at the lowest point
     * @param f what falls, and how far
     * @return the deployment
     */
    Figure write(LineExplanation before, LineExplanation peak, Drop f) {
        sheet.section("Energy taken by the line");
        Figure work = writeLine(before, peak);
        if (arrest.isBound()) {
            return writeUnequal(work, f);
        }
        sheet.section("Energy taken by the connection");
        Figure p = sheet.given("P", "load on the line", arrest.lineLoad(), Dimension.FORCE, SOLUTION);
        Figure x = sheet.given("x", "deployment of the connection", arrest.deployment(), Dimension.LENGTH, SOLUTION);
        LoadingCurve law = ArrestExplanation.curve(arrest);
        CurveExplanation curve = new CurveExplanation(
                sheet, law, "c", source(arrest.fall().fallers().get(0)));
        double si = arrest.deployment();
        curve.writeCorners(si);
        Figure taken = sheet.row(
                "W_c", "work taken by the connection", curve.work(x, p, si), Dimension.ENERGY, "∫F dx by trapezoids");
        curve.extensionAt(p, si)
                .ifPresent(again -> sheet.row(
                        "x_P", "deployment at the force P on its curve: must be x", again, Dimension.LENGTH, "curve"));
        sheet.section("Balance");
        Figure weight = sheet.row(
                "G", "weight of those who fall", times(f.falling().mass(), f.gravity()), Dimension.FORCE, "m g");
        Figure fall = sheet.row(
                "W_f",
                "energy set free by the fall",
                times(weight, sum(f.falling().freeFall(), f.descent(), x)),
                Dimension.ENERGY,
                "weight times height");
        sheet.row(
                "W_r",
                "what does not add up",
                minus(fall, sum(work, taken)),
                Dimension.ENERGY,
                "energy balance: 0 but for rounding");
        if (curve.onPlateau(si) && p.value() > weight.value()) {
            Figure start = curve.startOfPiece(si);
            Expression spare = minus(
                    times(weight, sum(f.falling().freeFall(), f.descent(), start)), sum(work, curve.workToPiece(si)));
            sheet.row(
                    "x_P",
                    "deployment from the balance while P stays on its plateau: must be x",
                    sum(start, over(spare, minus(p, weight))),
                    Dimension.LENGTH,
                    "energy balance solved for x");
        }
        return x;
    }

    /** Where the forces of the loading curve of one who falls come from: stated for the dry, or for another condition. */
    private String source(Worker faller) {
        Optional<AbsorberCondition> other =
                faller.connection().deployment().condition(arrest.side(), arrest.temperature());
        return other.map(c -> "design, absorber " + c.kind().label() + ": " + c.source())
                .orElse("design");
    }

    /** Several who are not alike: each has an own extension, and what the line takes is more than they are credited with. */
    private Figure writeUnequal(Figure work, Drop f) {
        sheet.section("Energy taken by the connections");
        List<Expression> taken = new ArrayList<>();
        List<Expression> released = new ArrayList<>();
        List<Expression> forces = new ArrayList<>();
        List<Figure> extensions = new ArrayList<>();
        int largest = 0;
        Left left = left();
        for (int i = 0; i < arrest.fall().fallers().size(); i++) {
            Worker w = arrest.fall().fallers().get(i);
            String k = "_" + (i + 1);
            double si = arrest.deployments().get(i);
            LoadingCurve law = law(w);
            Figure x = sheet.given("x" + k, "largest deployment of " + w.id(), si, Dimension.LENGTH, BOUND);
            Figure p = isRigid(law, si)
                    ? sheet.given("P" + k, left.what() + w.id(), left.force(), Dimension.FORCE, BOUND)
                    : sheet.given("P" + k, "largest force of " + w.id(), law.force(si), Dimension.FORCE, BOUND);
            CurveExplanation curve = new CurveExplanation(sheet, law, "c" + (i + 1) + ".", source(w));
            curve.writeCorners(si);
            taken.add(sheet.row(
                    "W_c" + k, "work taken by it", curve.work(x, p, si), Dimension.ENERGY, "∫F dx by trapezoids"));
            Faller own = f.falling().each().get(i);
            released.add(times(own.mass(), f.gravity(), sum(own.freeFall(), f.descent(), x)));
            forces.add(p);
            extensions.add(x);
            largest = si > arrest.deployments().get(largest) ? i : largest;
        }
        Figure all = sheet.row("W_c", "work taken by all connections", sum(taken), Dimension.ENERGY, "sum");
        sheet.row("P", "load on the line: their largest forces together", sum(forces), Dimension.FORCE, "sum");
        sheet.section("Balance");
        Figure fall =
                sheet.row("W_f", "energy set free by the fall", sum(released), Dimension.ENERGY, "weight times height");
        sheet.row(
                "W_r",
                "fall less what was taken: not above 0, since each is credited only with the work on the line that the"
                        + " others leave",
                minus(fall, sum(work, all)),
                Dimension.ENERGY,
                "bound on the safe side: decision 33");
        return extensions.get(largest);
    }

    private LoadingCurve law(Worker faller) {
        return faller.connection().curve(arrest.side(), arrest.temperature());
    }

    /** Tells whether a curve rises without extension: before a rigid start gives, and at a rigid stop. */
    private static boolean isRigid(LoadingCurve law, double x) {
        return x <= 0 || CurveExplanation.isAtRigidStop(law, x);
    }

    /** Force of one whose curve is rigid where he comes to rest, and its name up to whose it is. */
    private record Left(double force, String what) {}

    /** What the others leave of the load on the line; several whose curves are rigid share it, since nothing parts them. */
    private Left left() {
        double force = arrest.lineLoad();
        int rigid = 0;
        for (int i = 0; i < arrest.fall().fallers().size(); i++) {
            LoadingCurve law = law(arrest.fall().fallers().get(i));
            double x = arrest.deployments().get(i);
            if (isRigid(law, x)) {
                rigid++;
            } else {
                force -= law.force(x);
            }
        }
        return rigid > 1
                ? new Left(force / rigid, "equal share of what the others leave of the load on the line, of ")
                : new Left(force, "largest force, what the others leave of the load on the line, of ");
    }

    private Figure writeLine(LineExplanation before, LineExplanation peak) {
        List<Expression> parts = new ArrayList<>();
        Figure was = sheet.row("E_b", "energy of the cable before", sum(before.energies()), Dimension.ENERGY, "sum");
        Figure is = sheet.row(
                "E", "energy of the cable at the lowest point", sum(peak.energies()), Dimension.ENERGY, "sum");
        parts.add(sheet.row("W_1", "grown in the cable", minus(is, was), Dimension.ENERGY, "difference"));
        EnergyAccount account = arrest.energy();
        int n = arrest.fall().hanging().size();
        if (n > 0) {
            List<Expression> lifted = new ArrayList<>();
            for (int i = 0; i < n; i++) {
                LoadPosition load = arrest.before().loads().get(i);
                Figure q = sheet.given(
                        "Q_" + (i + 1),
                        "weight of " + arrest.fall().hanging().get(i).worker().id() + ", who hangs",
                        load.force(),
                        Dimension.FORCE,
                        "m g");
                lifted.add(times(q, minus(peak.elevationOf(arrest.peak().loads().get(i)), before.elevationOf(load))));
            }
            parts.add(sheet.row("W_2", "lent to those who hang", sum(lifted), Dimension.ENERGY, "weight times height"));
        }
        if (account.friction() != 0) {
            parts.add(sheet.given(
                    "W_3",
                    "heat of friction at the anchors, ∫ΔΨ dq along the path",
                    account.friction(),
                    Dimension.ENERGY,
                    "followed step by step; appendix A.3"));
        }
        if (!arrest.inlineAbsorbers().isEmpty()) {
            parts.add(writeAbsorbers());
        }
        if (!peak.springEnergies().isEmpty()) {
            parts.add(sheet.row(
                    "W_5",
                    "grown in elastic anchors",
                    minus(sum(peak.springEnergies()), sum(before.springEnergies())),
                    Dimension.ENERGY,
                    "difference"));
        }
        Figure work = sheet.row("W", "energy taken by the line", sum(parts), Dimension.ENERGY, "sum");
        if (!Double.isNaN(arrest.pathWork())) {
            sheet.given(
                    "W_P",
                    "the same as ∫P dδ along the path: must be W",
                    arrest.pathWork(),
                    Dimension.ENERGY,
                    "quadrature; a second way");
        }
        return work;
    }

    private Expression writeAbsorbers() {
        List<Expression> terms = new ArrayList<>();
        for (InlineAbsorberState each : arrest.inlineAbsorbers()) {
            Optional<Expression> at = workOf(arrest.peak(), each, "");
            Optional<InlineAbsorberState> earlier = arrest.before().inlineAbsorbers().stream()
                    .filter(s -> s.supportId().equals(each.supportId()))
                    .findFirst();
            Optional<Expression> was = earlier.flatMap(s -> workOf(arrest.before(), s, "b"));
            if (at.isEmpty() || was.isEmpty()) {
                return sheet.given(
                        "W_4",
                        "taken by in-line absorbers",
                        arrest.energy().inlineAbsorbers(),
                        Dimension.ENERGY,
                        "∫F de along their curves");
            }
            terms.add(minus(at.get(), was.get()));
        }
        return sheet.row("W_4", "taken by in-line absorbers", sum(terms), Dimension.ENERGY, "difference");
    }

    /** Work up to an extension, as long as the absorber is on its first loading. */
    private Optional<Expression> workOf(LineEquilibrium state, InlineAbsorberState absorber, String tag) {
        List<Support> supports = line();
        int end = supports.get(0).id().equals(absorber.supportId()) ? 0 : supports.size() - 1;
        LoadingCurve law = supports.get(end).inlineAbsorber().orElseThrow().curve();
        double tension = end == 0 ? state.firstTension() : state.lastTension();
        String k = tag + "a" + end;
        double e = absorber.extension();
        boolean rigidStart = e == 0;
        if (!rigidStart && Math.abs(law.force(e) - tension) > Tolerances.ON_ITS_CURVE * tension) {
            return Optional.empty();
        }
        if (rigidStart) {
            return Optional.of(number(0));
        }
        Figure x = sheet.given(
                "e_" + k, "extension of the absorber at " + absorber.supportId(), e, Dimension.LENGTH, SOLUTION);
        Figure f = sheet.given("T_" + k, "force in it", tension, Dimension.FORCE, "tension at that end");
        CurveExplanation curve = new CurveExplanation(sheet, law, k + ".");
        curve.writeCorners(e);
        Figure work =
                sheet.row("U_" + k, "work taken by it", curve.work(x, f, e), Dimension.ENERGY, "∫F de by trapezoids");
        return Optional.of(work);
    }

    private List<Support> line() {
        return arrest.line().supports();
    }
}
