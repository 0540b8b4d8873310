package org.lifeline.samples;

import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.lifeline.analysis.ArrestResult;
import org.lifeline.analysis.EnergyBalance;
import org.lifeline.base.Point;
import org.lifeline.base.Units;
import org.lifeline.model.Attachment;
import org.lifeline.model.ClearanceRules;
import org.lifeline.model.Connection;
import org.lifeline.model.Fall;
import org.lifeline.model.InlineAbsorber;
import org.lifeline.model.Installed;
import org.lifeline.model.Lifeline;
import org.lifeline.model.LifelineDesign;
import org.lifeline.model.Obstruction;
import org.lifeline.model.Passage;
import org.lifeline.model.Place;
import org.lifeline.model.Stiffness;
import org.lifeline.model.Support;
import org.lifeline.model.Worker;
import org.lifeline.model.absorber.DeploymentForce;
import org.lifeline.model.absorber.LoadingCurve;
import org.lifeline.model.cable.Cable;
import org.lifeline.model.cable.LoadElongation;
import org.lifeline.model.cable.RopeClass;

/** Designs of our own that between them use every part of the model, and their arrests. */
public final class SampleDesigns {
    private static final ClearanceRules BELOW =
            ClearanceRules.commonPractice().withObstructions(List.of(new Obstruction(0, 100, 2.0)));

    private SampleDesigns() {}

    /** Twelve millimetre steel rope. */
    public static Cable steel() {
        return Cable.builder()
                .name("12 mm 6x19 steel core, galvanised")
                .diameter(Units.millimetres(12))
                .massPerLength(0.576)
                .axialStiffness(Units.meganewtons(4.9))
                .breakingStrength(Units.kN(90.7))
                .terminationEfficiency(0.9)
                .build();
    }

    /** A lanyard with an absorber. */
    public static Connection lanyard() {
        return Connection.lanyard(
                1.8,
                Connection.PersonalAbsorber.builder()
                        .clearanceForce(Units.kN(3.2))
                        .maximumForce(Units.kN(6))
                        .maximumExtension(1.2)
                        .initialStiffness(Units.kNPerMetre(100))
                        .stopStiffness(Units.kNPerMetre(200))
                        .build());
    }

    /** A worker who stands 1.5 m below a line at 12.4 m. */
    public static Worker worker(String id, double mass, Attachment attachment, Connection connection) {
        return Worker.builder(id)
                .mass(mass)
                .walkingLevel(10.9)
                .attachment(attachment)
                .connection(connection)
                .build();
    }

    private static Worker usual(String id) {
        return worker(id, 100, Attachment.FREE_RUNNING, lanyard());
    }

    private static Fall fall(Place place, Worker... workers) {
        Fall.Builder b = Fall.builder("fall").at(place);
        List.of(workers).forEach(b::faller);
        return b.build();
    }

    /** A straight line of three unequal spans with friction, an elastic end and an in-line absorber. */
    public static Lifeline gallery() {
        return Lifeline.builder()
                .cable(steel())
                .support(Support.end("north", Point.of(0, 0, 12.4)).withCapacity(Units.kN(45)))
                .support(Support.intermediate("post 1", Point.of(12, 0, 12.4), Passage.friction(0.12))
                        .withCapacity(Units.kN(16)))
                .support(Support.intermediate("post 2", Point.of(22, 0, 12.6), Passage.free()))
                .support(Support.end("south", Point.of(30, 0, 12.4))
                        .withStiffness(Stiffness.alongX(Units.kNPerMetre(300)))
                        .withInlineAbsorber(InlineAbsorber.of(LoadingCurve.through(
                                List.of(
                                        new LoadingCurve.Corner(0, Units.kN(8)),
                                        new LoadingCurve.Corner(0.8, Units.kN(8))),
                                8e6,
                                Units.kNPerMetre(220)))))
                .pretension(Units.kN(1.5))
                .build();
    }

    /** A line that turns two corners and climbs. */
    public static Lifeline corner() {
        return Lifeline.builder()
                .cable(steel())
                .endAnchor("gate", Point.of(0, 0, 12.4))
                .support(Support.intermediate("corner 1", Point.of(9, 0, 12.4), Passage.friction(0.1))
                        .withStiffness(Stiffness.rigid().withX(4e5).withY(4e5)))
                .intermediateAnchor("corner 2", Point.of(14, 7, 12.9), Passage.free())
                .endAnchor("tower", Point.of(14, 16, 13.4))
                .pretension(Units.kN(2))
                .build();
    }

    /** A single level span. */
    public static Lifeline single(Cable cable, Installed installed) {
        return Lifeline.builder()
                .cable(cable)
                .endAnchor("west", Point.of(0, 0, 12.4))
                .endAnchor("east", Point.of(10, 0, 12.4))
                .installed(installed)
                .build();
    }

    /** A fibre rope with a curve of three straight pieces. */
    public static Cable fibre() {
        return Cable.builder()
                .name("16 mm fibre rope")
                .weightPerLength(1.6)
                .elongation(LoadElongation.curve(List.of(
                        new LoadElongation.Corner(0, 0),
                        new LoadElongation.Corner(0.02, Units.kN(1.2)),
                        new LoadElongation.Corner(0.05, Units.kN(6)),
                        new LoadElongation.Corner(0.09, Units.kN(18)))))
                .breakingStrength(Units.kN(42))
                .build();
    }

    /** A single span whose first anchor yields downward. */
    private static Lifeline soft() {
        return single(steel(), Installed.pretension(2000))
                .withSupports(s -> s.id().equals("west")
                        ? s.withStiffness(Stiffness.rigid().withZ(6e4))
                        : s);
    }

    private static Fall sequence() {
        return Fall.builder("second man")
                .at(Place.of(2, 4))
                .faller(usual("second"))
                .hanging(worker("first", 90, Attachment.GRIPPED, lanyard()), Place.of(2, 7))
                .hanging(usual("third"), Place.of(1, 5))
                .build();
    }

    /** Arrests of every kind, by name. */
    public static Map<String, ArrestResult> arrests() {
        EnergyBalance balance = EnergyBalance.withDefaults().withClearance(BELOW);
        EnergyBalance low = balance.withSide(DeploymentForce.CLEARANCE);
        Lifeline plain = single(steel(), Installed.initialSag(1, 0.08));
        Map<String, ArrestResult> map = new TreeMap<>();
        map.put("gallery", balance.withTemperature(-30).solve(gallery(), fall(Place.of(2, 4), usual("A"))));
        map.put("gallery hot", low.withTemperature(40).solve(gallery(), fall(Place.of(1, 6), usual("A"))));
        map.put("corner", balance.solve(corner(), fall(Place.of(2, 3), usual("A"))));
        map.put("sequence", balance.solve(gallery(), sequence()));
        map.put(
                "two together",
                balance.solve(
                        plain,
                        fall(
                                Place.of(1, 4),
                                worker("A", 100, Attachment.GRIPPED, lanyard()),
                                worker("B", 80, Attachment.GRIPPED, lanyard()))));
        map.put(
                "bottoms out",
                low.solve(
                        single(steel(), Installed.pretension(4000)),
                        fall(Place.of(1, 2), worker("heavy", 160, Attachment.GRIPPED, lanyard()))));
        map.put(
                "plain lanyard",
                balance.solve(
                        single(steel(), Installed.horizontalTension(3000)),
                        fall(
                                Place.of(1, 5),
                                worker(
                                        "A",
                                        100,
                                        Attachment.FREE_RUNNING,
                                        Connection.plainLanyard(1.5, LoadingCurve.spring(60_000))))));
        map.put(
                "self-retracting",
                balance.solve(
                        single(fibre(), Installed.pretension(900)),
                        fall(
                                Place.of(1, 5),
                                worker(
                                        "A",
                                        100,
                                        Attachment.FREE_RUNNING,
                                        Connection.selfRetracting(
                                                0.6,
                                                Connection.PersonalAbsorber.builder()
                                                        .clearanceForce(2500)
                                                        .maximumForce(4500)
                                                        .maximumExtension(1)
                                                        .build())))));
        map.put(
                "fibre",
                balance.withTemperature(35)
                        .solve(single(fibre(), Installed.initialSag(1, 0.3)), fall(Place.of(1, 3), usual("A"))));
        map.put(
                "given curve",
                balance.solve(
                        plain,
                        fall(
                                Place.of(1, 5),
                                worker(
                                        "A",
                                        100,
                                        Attachment.GRIPPED,
                                        Connection.givenCurve(
                                                1.6,
                                                LoadingCurve.through(
                                                        List.of(
                                                                new LoadingCurve.Corner(0, 0),
                                                                new LoadingCurve.Corner(0.05, 3000),
                                                                new LoadingCurve.Corner(1.3, 5500)),
                                                        Double.POSITIVE_INFINITY,
                                                        250_000))))));
        map.put(
                "weightless",
                balance.solve(
                        single(
                                Cable.builder()
                                        .weightPerLength(0)
                                        .axialStiffness(3e6)
                                        .build(),
                                Installed.pretension(2500)),
                        fall(Place.of(1, 4), usual("A"))));
        map.put(
                "at a post",
                balance.withTemperature(-30).solve(gallery(), fall(Place.atSupport("post 1"), usual("A"))));
        map.put("at an elastic end", low.solve(soft(), fall(Place.atSupport("west"), usual("A"))));
        map.put(
                "slack",
                low.solve(single(steel(), Installed.unstretchedLength(10.4)), fall(Place.of(1, 5), usual("A"))));
        return map;
    }

    /** A design with everything that a report can show. */
    public static LifelineDesign design(String title) {
        Cable rope = Cable.builder()
                .name("12 mm 6x19 steel core")
                .diameter(Units.millimetres(12))
                .ropeClass(RopeClass.C6X19_STEEL)
                .tensileGrade(1770e6)
                .axialStiffness(Units.meganewtons(4.9))
                .terminationEfficiency(0.9)
                .build();
        return LifelineDesign.builder(title)
                .line(gallery().toBuilder().cable(rope).build())
                .temperature(-30)
                .temperature(15)
                .temperature(40)
                .worker(usual("A"))
                .worker(worker("B", 85, Attachment.GRIPPED, lanyard()))
                .fall(Fall.builder("middle of bay 2")
                        .at(Place.of(2, 5))
                        .faller(usual("A"))
                        .build())
                .fall(Fall.builder("B after A")
                        .at(Place.of(1, 6))
                        .faller(worker("B", 85, Attachment.GRIPPED, lanyard()))
                        .hanging(usual("A"), Place.of(2, 5))
                        .build())
                .clearance(ClearanceRules.commonPractice()
                        .withObstructions(List.of(new Obstruction(0, 18, 4.0), new Obstruction(18, 30, 5.5))))
                .build();
    }
}
