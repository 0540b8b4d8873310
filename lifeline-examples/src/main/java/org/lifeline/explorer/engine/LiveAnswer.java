package org.lifeline.explorer.engine;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.lifeline.analysis.ArrestResult;
import org.lifeline.analysis.CablePiece;
import org.lifeline.analysis.EnergyBalance;
import org.lifeline.analysis.LineEquilibrium;
import org.lifeline.analysis.SpanState;
import org.lifeline.analysis.Statics;
import org.lifeline.analysis.clearance.ClearanceRow;
import org.lifeline.analysis.state.SupportReaction;
import org.lifeline.analysis.warning.Warning;
import org.lifeline.base.Violations;
import org.lifeline.model.Fall;
import org.lifeline.model.Lifeline;
import org.lifeline.model.LifelineDesign;
import org.lifeline.model.Obstruction;
import org.lifeline.model.Support;
import org.lifeline.model.Worker;
import org.lifeline.model.absorber.AbsorberCondition;
import org.lifeline.model.absorber.DeploymentForce;

/** What a page shows of one fall at once: both deployment forces, by energy balance. */
final class LiveAnswer {
    /** Straight pieces by which a piece of cable is drawn. */
    private static final int INTERVALS = 12;

    /** A radian in degrees; a script divides where the JDK multiplies. */
    private static final double RADIAN = 180 / Math.PI;

    private LiveAnswer() {}

    /** A design and one of its falls. */
    record Case(LifelineDesign design, Fall fall) {
        Lifeline line() {
            return design.line();
        }
    }

    static Case at(LifelineDesign design, int fall) {
        int number = Violations.requiredIndex("fall", fall, design.falls().size());
        return new Case(design, design.falls().get(number));
    }

    static String whole(LifelineDesign design, int fall, double temperature) {
        Case c = at(design, fall);
        Developed developed = new Developed(c.line());
        LineEquilibrium installed = Statics.withDefaults().solve(c.line(), List.of());
        Json json = new Json()
                .put("spans", spans(installed))
                .put("firstTension", installed.firstTension())
                .put("lastTension", installed.lastTension())
                .put("supports", supports(c.line(), developed))
                .put("obstructions", obstructions(design));
        Worker worker = c.fall().fallers().get(0);
        json.put("walkingLevel", worker.walkingLevel()).put("attachmentHeight", worker.attachmentHeight());
        for (DeploymentForce side : DeploymentForce.values()) {
            ArrestResult r = solve(c, temperature, side);
            json.put(
                    name(side),
                    results(r)
                            .put("before", developed.shape(r.before(), INTERVALS))
                            .put("peak", developed.shape(r.peak(), INTERVALS))
                            .put("attachmentBefore", developed.point(r.span(), r.attachmentBefore()))
                            .put("attachmentAtPeak", developed.point(r.span(), r.attachmentAtPeak()))
                            .put("rows", rows(r))
                            .put("warnings", warnings(r)));
        }
        return json.toString();
    }

    static String numbers(LifelineDesign design, int fall, double temperature) {
        Case c = at(design, fall);
        Json json = new Json();
        for (DeploymentForce side : DeploymentForce.values()) {
            json.put(name(side), results(solve(c, temperature, side)));
        }
        return json.toString();
    }

    static String side(Case c, double temperature, boolean clearance) {
        DeploymentForce side = clearance ? DeploymentForce.CLEARANCE : DeploymentForce.MAXIMUM;
        return new Json().put(name(side), results(solve(c, temperature, side))).toString();
    }

    private static String name(DeploymentForce side) {
        return side == DeploymentForce.CLEARANCE ? "clearance" : "maximum";
    }

    private static ArrestResult solve(Case c, double temperature, DeploymentForce side) {
        EnergyBalance balance = EnergyBalance.withDefaults()
                .withSide(side)
                .withClearance(c.design().clearance());
        return (Double.isNaN(temperature) ? balance : balance.withTemperature(temperature)).solve(c.line(), c.fall());
    }

    private static Json results(ArrestResult r) {
        List<Json> supports = new ArrayList<>();
        for (SupportReaction each : r.supports()) {
            supports.add(new Json()
                    .put("id", each.id())
                    .put("force", each.force())
                    .put("displacement", each.displacement().magnitude())
                    .put("slip", each.slip()));
        }
        Json json = new Json();
        Map<String, AbsorberCondition> conditions = r.fall().conditions(r.side(), r.temperature());
        if (!conditions.isEmpty()) {
            json.put(
                    "condition",
                    AbsorberCondition.words(conditions, r.fall().fallers().size()));
        }
        return json.put("temperature", r.temperature())
                .put("endAnchorLoad", r.endAnchorLoad())
                .put("postLoad", largestPost(r))
                .put("maximumTension", r.maximumTension())
                .put("arrestForce", r.arrestForce())
                .put("lineLoad", r.lineLoad())
                .put("tensionPerForce", r.maximumTension() / r.lineLoad())
                .put("sagAngle", sagAngle(r))
                .put("sag", r.sag())
                .put("lineDescent", r.lineDescent())
                .put("freeFall", r.freeFall())
                .put("deployment", r.deployment())
                .put("bottomedOut", r.bottomedOut())
                .put("totalFallDistance", r.totalFallDistance())
                .put("requiredBelowLine", r.clearance().requiredBelowLine())
                .put("lowestPoint", r.clearance().lowestPoint())
                .put("obstruction", r.clearance().obstruction())
                .put("margin", r.clearance().margin())
                .put("friction", r.energy().friction())
                .put("fallEnergy", r.energy().fall())
                .put("lineEnergy", r.energy().cable() + r.energy().hanging())
                .put("connectionEnergy", r.energy().connection())
                .put("supports", supports);
    }

    private static double largestPost(ArrestResult r) {
        double largest = Double.NaN;
        for (int i = 1; i < r.supports().size() - 1; i++) {
            double force = r.supports().get(i).force();
            largest = Double.isNaN(largest) ? force : Math.max(largest, force);
        }
        return largest;
    }

    /** The flatter one of the two legs beside the load [°]: it explains the tension, T = P / (sin of one + sin of the other). */
    private static double sagAngle(ArrestResult r) {
        if (r.fall().place().isAtSupport()) {
            return Double.NaN;
        }
        List<CablePiece> pieces = r.peak().span(r.span()).pieces();
        for (int i = 0; i + 1 < pieces.size(); i++) {
            if (pieces.get(i).loadAtEnd() > 0) {
                return Math.min(
                        below(pieces.get(i).endTension()),
                        below(pieces.get(i + 1).startTension()));
            }
        }
        return Double.NaN;
    }

    private static double below(org.lifeline.base.Vector3 tension) {
        return RADIAN * StrictMath.atan2(Math.abs(tension.z()), StrictMath.hypot(tension.x(), tension.y()));
    }

    private static List<Json> spans(LineEquilibrium installed) {
        List<Json> list = new ArrayList<>();
        for (SpanState each : installed.spans()) {
            list.add(new Json()
                    .put("sag", each.sag())
                    .put("horizontalTension", each.horizontalTension())
                    .put("unstretchedLength", each.unstretchedLength()));
        }
        return list;
    }

    private static List<Json> supports(Lifeline line, Developed developed) {
        List<Json> list = new ArrayList<>();
        for (int i = 0; i < line.supports().size(); i++) {
            Support each = line.supports().get(i);
            list.add(new Json()
                    .put("id", each.id())
                    .put("along", developed.along(i))
                    .put("z", each.position().z())
                    .put("capacity", each.capacity()));
        }
        return list;
    }

    private static List<Json> obstructions(LifelineDesign design) {
        List<Json> list = new ArrayList<>();
        for (Obstruction each : design.clearance().obstructions()) {
            list.add(new Json().put("from", each.from()).put("to", each.to()).put("elevation", each.elevation()));
        }
        return list;
    }

    private static List<Json> rows(ArrestResult r) {
        List<Json> list = new ArrayList<>();
        for (ClearanceRow each : r.clearance().rows()) {
            list.add(new Json()
                    .put("item", each.item())
                    .put("value", each.value())
                    .put("elevation", each.elevation()));
        }
        return list;
    }

    private static List<Json> warnings(ArrestResult r) {
        List<Json> list = new ArrayList<>();
        for (Warning each : r.warnings()) {
            list.add(new Json()
                    .put("code", each.code().key())
                    .put("text", each.toString())
                    .put("where", each.place()));
        }
        return list;
    }
}
