package org.lifeline.model;

import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaModifier;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Supplier;
import org.junit.jupiter.api.Test;
import org.lifeline.base.Point;
import org.lifeline.base.canonical.Canonical;
import org.lifeline.model.Connection.PersonalAbsorber;
import org.lifeline.model.absorber.AbsorberCondition;
import org.lifeline.model.absorber.AbsorberCondition.Kind;
import org.lifeline.model.absorber.LoadingCurve;
import org.lifeline.model.cable.Cable;
import org.lifeline.model.cable.LoadElongation;
import org.lifeline.model.cable.RopeClass;
import org.lifeline.model.incident.SecondFall;

/**
 * Values of the model are equal when everything that was stated is, and differ when anything of it does: made twice, each is
 * equal to its twin and to nothing else of its row; its canonical form agrees.
 */
class ValueSemanticsTest {
    private static final LoadingCurve SPRING = LoadingCurve.spring(5e4);

    private static LoadingCurve plateau(double force, double first, double stop) {
        return LoadingCurve.through(
                List.of(new LoadingCurve.Corner(0, force), new LoadingCurve.Corner(1, force)), first, stop);
    }

    private static Cable.Builder cable() {
        return Cable.builder()
                .name("rope")
                .diameter(0.012)
                .massPerLength(0.5)
                .axialStiffness(3e6)
                .breakingStrength(6e4)
                .terminationEfficiency(0.9)
                .dampingTime(1e-3);
    }

    private static PersonalAbsorber absorber(double low, double high) {
        return PersonalAbsorber.builder()
                .clearanceForce(low)
                .maximumForce(high)
                .maximumExtension(1.2)
                .initialStiffness(1e5)
                .build();
    }

    private static AbsorberCondition.Builder condition(Kind kind, double low, double high) {
        return AbsorberCondition.builder(kind)
                .clearanceForce(low)
                .maximumForce(high)
                .source("report");
    }

    private static Connection conditions(AbsorberCondition.Builder condition) {
        return Connection.lanyard(
                1.8,
                PersonalAbsorber.builder()
                        .clearanceForce(3000)
                        .maximumForce(6000)
                        .maximumExtension(1.2)
                        .initialStiffness(1e5)
                        .condition(condition.build())
                        .build());
    }

    private static Worker.Builder worker(String id) {
        return Worker.builder(id).mass(100).walkingLevel(10).connection(Connection.lanyard(1.8, absorber(3000, 6000)));
    }

    private static Post.Builder post() {
        return Post.ofHeight(1)
                .elasticModulus(2.1e11)
                .secondMomentX(1e-6)
                .secondMomentY(1e-6)
                .momentOfResistanceX(1e4)
                .momentOfResistanceY(1e4);
    }

    private static Lifeline.Builder line() {
        return Lifeline.builder()
                .cable(cable().build())
                .endAnchor("north", Point.of(0, 0, 12))
                .intermediateAnchor("post", Point.of(12, 0, 12), Passage.friction(0.1))
                .endAnchor("south", Point.of(24, 0, 12))
                .pretension(1500);
    }

    private static Fall.Builder fall() {
        return Fall.builder("f").at(Place.of(1, 5)).faller(worker("A").build());
    }

    private static LifelineDesign.Builder design() {
        return LifelineDesign.builder("gallery")
                .line(line().build())
                .worker(worker("A").build());
    }

    private static List<List<Supplier<Object>>> rows() {
        List<List<Supplier<Object>>> rows = new ArrayList<>();
        rows.add(List.of(
                () -> LoadElongation.linear(1e6),
                () -> LoadElongation.linear(2e6),
                () -> LoadElongation.curve(List.of(new LoadElongation.Corner(0, 0), new LoadElongation.Corner(1, 1e6))),
                () -> LoadElongation.curve(
                        List.of(new LoadElongation.Corner(0, 0), new LoadElongation.Corner(0.5, 1e6)))));
        rows.add(List.of(
                () -> cable().build(),
                () -> cable().name("other").build(),
                () -> cable().diameter(0.013).build(),
                () -> cable().massPerLength(0.6).build(),
                () -> cable().axialStiffness(4e6).build(),
                () -> cable().breakingStrength(7e4).build(),
                () -> cable().terminationEfficiency(0.8).build(),
                () -> cable().thermalExpansion(1e-5).build(),
                () -> cable().dampingTime(2e-3).build(),
                () -> Cable.builder().massPerLength(0.5).axialStiffness(3e6).build(),
                () -> Cable.builder().weightPerLength(5).axialStiffness(3e6).build(),
                () -> Cable.builder().weightPerLength(6).axialStiffness(3e6).build(),
                () -> Cable.builder()
                        .ropeClass(RopeClass.C7X19)
                        .diameter(0.012)
                        .elasticModulus(1e11)
                        .build()));
        rows.add(List.of(
                () -> SPRING,
                () -> LoadingCurve.spring(6e4),
                () -> plateau(5000, Double.POSITIVE_INFINITY, Double.POSITIVE_INFINITY),
                () -> plateau(6000, Double.POSITIVE_INFINITY, Double.POSITIVE_INFINITY),
                () -> plateau(5000, 1e5, Double.POSITIVE_INFINITY),
                () -> plateau(5000, 1e5, 2e5)));
        rows.add(List.of(() -> InlineAbsorber.of(SPRING), () -> InlineAbsorber.of(plateau(5000, 1e5, 1e5))));
        rows.add(List.of(() -> absorber(3000, 6000), () -> absorber(3100, 6000), () -> absorber(3000, 6100)));
        rows.add(List.of(
                () -> Connection.lanyard(1.8, absorber(3000, 6000)),
                () -> Connection.lanyard(1.9, absorber(3000, 6000)),
                () -> Connection.lanyard(1.8, absorber(3100, 6000)),
                () -> Connection.lanyard(1.8, absorber(3000, 6100)),
                () -> conditions(condition(Kind.WET, 2500, 5000)),
                () -> conditions(condition(Kind.COLD, 2500, 5000)),
                () -> conditions(condition(Kind.COLD, 2500, 5000).temperature(-10)),
                () -> conditions(condition(Kind.HOT, 2500, 5000)),
                () -> conditions(condition(Kind.WET, 2600, 5000)),
                () -> conditions(condition(Kind.WET, 2500, 5100)),
                () -> conditions(condition(Kind.WET, 2500, 5000).source("other")),
                () -> Connection.plainLanyard(1.8, SPRING),
                () -> Connection.givenCurve(1.8, SPRING),
                () -> Connection.selfRetracting(1.8, absorber(3000, 6000))));
        rows.add(List.of(Passage::free, Passage::clamped, () -> Passage.friction(0.1), () -> Passage.friction(0.2)));
        rows.add(List.of(
                () -> Installed.pretension(1000),
                () -> Installed.pretension(1001),
                () -> Installed.horizontalTension(1000),
                () -> Installed.horizontalTension(1000).inSpan(2),
                () -> Installed.initialSag(1, 0.1),
                () -> Installed.unstretchedLength(24),
                () -> Installed.pretension(1000).atTemperature(20)));
        Support end = Support.end("a", Point.of(0, 0, 12));
        Support post = Support.intermediate("a", Point.of(0, 0, 12), Passage.free());
        rows.add(List.of(
                () -> Support.end("a", Point.of(0, 0, 12)),
                () -> Support.end("b", Point.of(0, 0, 12)),
                () -> end.withPosition(Point.of(0, 0, 13)),
                () -> end.withStiffness(Stiffness.alongX(1e5)),
                () -> end.withInlineAbsorber(InlineAbsorber.of(SPRING)),
                () -> end.withCapacity(2e4),
                () -> end.withPost(Post.ofHeight(1).build()),
                () -> Support.intermediate("a", Point.of(0, 0, 12), Passage.free()),
                () -> post.withPassage(Passage.friction(0.1)),
                () -> post.withPassage(Passage.clamped())));
        rows.add(List.of(
                () -> post().build(),
                () -> Post.ofHeight(2).build(),
                () -> post().eccentricity(new Post.Eccentricity(0.1, 0)).build(),
                () -> post().secondMomentX(2e-6).build(),
                () -> post().secondMomentY(2e-6).build(),
                () -> post().elasticModulus(2e11).build(),
                () -> post().momentOfResistanceX(2e4).build(),
                () -> post().momentOfResistanceY(2e4).build()));
        rows.add(List.of(() -> Place.of(1, 2), () -> Place.of(2, 2), () -> Place.of(1, 3), () -> Place.atSupport("a")));
        rows.add(List.of(
                () -> worker("A").build(),
                () -> worker("B").build(),
                () -> worker("A").mass(101).build(),
                () -> worker("A").walkingLevel(11).build(),
                () -> worker("A").attachmentHeight(1.4).build(),
                () -> worker("A").attachment(Attachment.GRIPPED).build(),
                () -> worker("A").offset(0.2).build(),
                () -> worker("A")
                        .connection(Connection.plainLanyard(1.8, SPRING))
                        .build()));
        rows.add(List.of(
                () -> fall().build(),
                () -> fall().at(Place.of(1, 6)).build(),
                () -> fall().freeFall(1).build(),
                () -> fall().faller(worker("B").build()).build(),
                () -> fall().hanging(worker("B").build(), Place.of(1, 3)).build(),
                () -> fall().hanging(worker("B").build(), Place.atSupport("post"))
                        .build(),
                () -> Fall.builder("g")
                        .at(Place.of(1, 5))
                        .faller(worker("A").build())
                        .build()));
        rows.add(List.of(
                () -> line().build(),
                () -> line().gravity(9.81).build(),
                () -> line().pretension(1600).build(),
                () -> line().cable(cable().name("other").build()).build(),
                () -> line().build().withSupports(s -> s.withStiffness(Stiffness.alongX(1e5)))));
        rows.add(List.of(
                () -> design().build(),
                () -> design().temperature(-30).build(),
                () -> design().worker(worker("B").build()).build(),
                () -> design().fall(fall().build()).build(),
                () -> design().clearance(ClearanceRules.commonPractice().withMargin(1))
                        .build(),
                () -> design().clearance(
                                ClearanceRules.commonPractice().withObstructions(List.of(new Obstruction(0, 5, 3))))
                        .build(),
                () -> design().clearance(ClearanceRules.commonPractice()
                                .withObstructions(List.of(new Obstruction(0, 5, 3, 0.2))))
                        .build(),
                () -> design().modelFactors(new ModelFactors(1.1, 1)).build(),
                () -> design().workingFloor(10).build(),
                () -> design().rescuerMass(90).build(),
                () -> design().worker(worker("B").build())
                        .secondFall(SecondFall.of("B"))
                        .build(),
                () -> design().worker(worker("B").build())
                        .secondFall(new SecondFall("B", List.of(0.5)))
                        .build(),
                () -> design().line(line().gravity(9.81).build()).build()));
        return rows;
    }

    @Test
    void twinsAreEqualAndOthersAreNot() {
        for (List<Supplier<Object>> row : rows()) {
            for (int i = 0; i < row.size(); i++) {
                Object one = row.get(i).get();
                for (int j = 0; j < row.size(); j++) {
                    Object other = row.get(j).get();
                    assertThat(one.equals(other)).as(one + " and " + other).isEqualTo(i == j);
                    if (i == j) {
                        assertThat(one).hasSameHashCodeAs(other).hasToString(other.toString());
                    }
                    if (one instanceof Canonical a && other instanceof Canonical b) {
                        assertThat(a.fingerprint().equals(b.fingerprint()))
                                .as(one + " and " + other)
                                .isEqualTo(i == j);
                        assertThat(a.differences(b).isEmpty()).isEqualTo(i == j);
                    }
                }
                assertThat(one.equals("something else")).isFalse();
                assertThat(one.toString()).doesNotContain("@").isNotBlank();
            }
        }
    }

    /** No class of the model was forgotten: each that holds values compares them. */
    @Test
    void everyClassOfTheModelComparesValues() {
        List<String> without = new ClassFileImporter()
                        .withImportOption(ImportOption.Predefined.DO_NOT_INCLUDE_TESTS)
                        .importPackages("org.lifeline.model")
                        .stream()
                        .filter(c -> c.getModifiers().contains(JavaModifier.PUBLIC))
                        .filter(c -> !c.isEnum() && !c.isInterface() && !c.isRecord())
                        .filter(c -> !c.getSimpleName().endsWith("Builder"))
                        // A class that only holds constants and functions has no values to compare.
                        .filter(c -> c.getConstructors().stream()
                                .anyMatch(k -> !k.getModifiers().contains(JavaModifier.PRIVATE)
                                        || !k.getRawParameterTypes().isEmpty()))
                        .filter(c -> c.tryGetMethod("equals", Object.class).isEmpty()
                                || c.tryGetMethod("hashCode").isEmpty()
                                || c.tryGetMethod("toString").isEmpty())
                        .map(JavaClass::getName)
                        .toList();
        assertThat(without).isEmpty();
    }
}
