package org.lifeline.contract;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Supplier;
import java.util.function.UnaryOperator;
import org.lifeline.analysis.EnergyBalance;
import org.lifeline.analysis.LoadedSpans;
import org.lifeline.analysis.RescueLoad;
import org.lifeline.analysis.Statics;
import org.lifeline.analysis.TransientArrest;
import org.lifeline.analysis.state.AttachmentLimit;
import org.lifeline.base.Point;
import org.lifeline.base.ProgressListener;
import org.lifeline.model.Attachment;
import org.lifeline.model.ClearanceRules;
import org.lifeline.model.Connection;
import org.lifeline.model.Fall;
import org.lifeline.model.InlineAbsorber;
import org.lifeline.model.Installed;
import org.lifeline.model.Lifeline;
import org.lifeline.model.LifelineDesign;
import org.lifeline.model.ModelFactors;
import org.lifeline.model.Passage;
import org.lifeline.model.Place;
import org.lifeline.model.Post;
import org.lifeline.model.Stiffness;
import org.lifeline.model.Support;
import org.lifeline.model.Worker;
import org.lifeline.model.absorber.AbsorberCondition;
import org.lifeline.model.absorber.DeploymentForce;
import org.lifeline.model.absorber.LoadingCurve;
import org.lifeline.model.cable.Cable;
import org.lifeline.model.cable.LoadElongation;
import org.lifeline.model.cable.RopeClass;
import org.lifeline.model.incident.SecondFall;
import org.lifeline.verify.Check;
import org.lifeline.verify.Verifier;

/** A valid object of every public type with setters, and a legal argument of every type that a setter takes. */
final class SetterSamples {
    private SetterSamples() {}

    static Connection connection() {
        return Connection.plainLanyard(1.8, LoadingCurve.spring(5e4));
    }

    static AbsorberCondition.Builder condition() {
        return AbsorberCondition.builder(AbsorberCondition.Kind.COLD)
                .clearanceForce(3000)
                .maximumForce(7000)
                .source("report");
    }

    static Worker worker() {
        return Worker.builder("A")
                .mass(100)
                .walkingLevel(10.9)
                .connection(connection())
                .build();
    }

    static Cable cable() {
        return Cable.builder().massPerLength(0.5).axialStiffness(5e6).build();
    }

    static Support post() {
        return Support.intermediate("post", Point.of(12, 0, 12.4), Passage.free());
    }

    static Lifeline line() {
        return Lifeline.builder()
                .cable(cable())
                .endAnchor("north", Point.of(0, 0, 12.4))
                .support(post())
                .endAnchor("south", Point.of(24, 0, 12.4))
                .pretension(1500)
                .build();
    }

    static Fall fall() {
        return Fall.builder("fall").at(Place.of(1, 6)).faller(worker()).build();
    }

    static LifelineDesign.Builder design() {
        return LifelineDesign.builder("design").line(line()).worker(worker()).fall(fall());
    }

    /** A fresh, valid object by type. */
    static Map<Class<?>, Supplier<Object>> objects() {
        Map<Class<?>, Supplier<Object>> map = new LinkedHashMap<>();
        map.put(Cable.class, SetterSamples::cable);
        map.put(ClearanceRules.class, ClearanceRules::commonPractice);
        map.put(Connection.class, SetterSamples::connection);
        map.put(Fall.class, SetterSamples::fall);
        map.put(Installed.class, () -> Installed.pretension(1500));
        map.put(Lifeline.class, SetterSamples::line);
        map.put(LifelineDesign.class, () -> design().build());
        map.put(Stiffness.class, Stiffness::rigid);
        map.put(Support.class, SetterSamples::post);
        map.put(Worker.class, SetterSamples::worker);
        map.put(Lifeline.Builder.class, () -> line().toBuilder());
        map.put(LifelineDesign.Builder.class, SetterSamples::design);
        map.put(Worker.Builder.class, () -> worker().toBuilder("A"));
        map.put(
                Fall.Builder.class,
                () -> Fall.builder("fall").at(Place.of(1, 6)).faller(worker()));
        map.put(
                Connection.AbsorberBuilder.class,
                () -> Connection.PersonalAbsorber.builder()
                        .clearanceForce(3200)
                        .maximumForce(6000)
                        .maximumExtension(1.2));
        map.put(AbsorberCondition.Builder.class, () -> condition().temperature(-10));
        map.put(
                LoadedSpans.Builder.class,
                () -> LoadedSpans.builder()
                        .run(10)
                        .weightPerLength(5)
                        .axialStiffness(4e6)
                        .unstretchedLength(10.1)
                        .loadShare(0.5)
                        .load(1000));
        map.put(
                Post.Builder.class,
                () -> Post.ofHeight(2)
                        .elasticModulus(2.1e11)
                        .secondMomentX(1e-5)
                        .secondMomentY(1e-5));
        map.put(EnergyBalance.class, EnergyBalance::withDefaults);
        map.put(Statics.class, Statics::withDefaults);
        map.put(RescueLoad.class, () -> RescueLoad.ofRescuer(100));
        map.put(TransientArrest.class, TransientArrest::withDefaults);
        map.put(Verifier.class, Verifier::withDefaults);
        return map;
    }

    /** Builders of cables in all their ways: a setter is tried on the one that it makes a complete cable of. */
    static Cable.Builder cableBuilder(String setter) {
        Cable.Builder b = Cable.builder();
        return switch (setter) {
            case "massPerLength", "weightPerLength" -> b.axialStiffness(5e6);
            case "axialStiffness", "elongation" -> b.massPerLength(0.5);
            case "elasticModulus" -> b.massPerLength(0.5).metallicArea(6e-5);
            case "metallicArea" -> b.massPerLength(0.5).elasticModulus(1e11);
            case "tensileGrade" ->
                b.ropeClass(RopeClass.C6X19_STEEL).diameter(0.012).elasticModulus(1e11);
            case "ropeClass" -> b.diameter(0.012).elasticModulus(1e11);
            default -> b.massPerLength(0.5).axialStiffness(5e6);
        };
    }

    /** A legal argument by type. */
    static Map<Class<?>, Object> arguments() {
        Map<Class<?>, Object> map = new LinkedHashMap<>();
        map.put(double.class, 1.0);
        map.put(double[].class, new double[] {1});
        map.put(int.class, 2);
        map.put(String.class, "name");
        map.put(List.class, new ArrayList<>());
        map.put(UnaryOperator.class, UnaryOperator.identity());
        map.put(Attachment.class, Attachment.GRIPPED);
        map.put(Post.class, Post.ofHeight(2).build());
        map.put(Post.Eccentricity.class, new Post.Eccentricity(0.1, 0.1));
        map.put(Cable.class, cable());
        map.put(Check.class, Check.STRETCH);
        map.put(ClearanceRules.class, ClearanceRules.commonPractice());
        map.put(Connection.class, connection());
        map.put(AbsorberCondition.class, condition().build());
        map.put(DeploymentForce.class, DeploymentForce.CLEARANCE);
        map.put(AttachmentLimit.class, AttachmentLimit.HELD);
        map.put(Fall.class, fall());
        map.put(InlineAbsorber.class, InlineAbsorber.of(LoadingCurve.spring(1e5)));
        map.put(Installed.class, Installed.pretension(2000));
        map.put(Lifeline.class, line());
        map.put(LoadElongation.class, LoadElongation.linear(1e6));
        map.put(ModelFactors.class, ModelFactors.none());
        map.put(Passage.class, Passage.free());
        map.put(Place.class, Place.of(1, 3));
        map.put(Point.class, Point.of(36, 0, 12.4));
        map.put(ProgressListener.class, ProgressListener.none());
        map.put(RopeClass.class, RopeClass.C6X19_STEEL);
        map.put(SecondFall.class, SecondFall.of("B"));
        map.put(Stiffness.class, Stiffness.rigid());
        map.put(Support.class, post());
        map.put(Worker.class, worker());
        return map;
    }
}
