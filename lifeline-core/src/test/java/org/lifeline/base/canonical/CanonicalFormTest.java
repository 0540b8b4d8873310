package org.lifeline.base.canonical;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.math.BigInteger;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.lifeline.analysis.EnergyBalance;
import org.lifeline.base.InvalidInputException;
import org.lifeline.base.Point;
import org.lifeline.model.Connection;
import org.lifeline.model.Fall;
import org.lifeline.model.Lifeline;
import org.lifeline.model.LifelineDesign;
import org.lifeline.model.Passage;
import org.lifeline.model.Place;
import org.lifeline.model.Worker;
import org.lifeline.model.absorber.DeploymentForce;
import org.lifeline.model.absorber.LoadingCurve;
import org.lifeline.model.cable.Cable;

class CanonicalFormTest {
    private static Lifeline line(double pretension, String... posts) {
        Lifeline.Builder b = Lifeline.builder()
                .cable(Cable.builder().massPerLength(0.5).axialStiffness(3e6).build())
                .endAnchor("north", Point.of(0, 0, 12));
        for (int i = 0; i < posts.length; i++) {
            b.intermediateAnchor(posts[i], Point.of(10 * (i + 1), 0, 12), Passage.free());
        }
        return b.endAnchor("south", Point.of(10 * (posts.length + 1), 0, 12))
                .pretension(pretension)
                .build();
    }

    private static final Worker WORKER = Worker.builder("A")
            .mass(100)
            .walkingLevel(10)
            .connection(Connection.plainLanyard(1.8, LoadingCurve.spring(5e4)))
            .build();

    private static final Fall FALL =
            Fall.builder("f").at(Place.of(1, 5)).faller(WORKER).build();

    /** The bytes as the documentation of the fingerprint lays them out, put together by hand. */
    @Test
    void theFingerprintIsTheHashOfTheDocumentedBytes() throws NoSuchAlgorithmException {
        ByteBuffer b = ByteBuffer.allocate(200);
        text(b, "org.lifeline.canonical").putInt(1);
        text(b, "kind").putInt(2);
        text(b, "a");
        text(b, "kN·m").put((byte) 1).putLong(0x3ff8000000000000L);
        text(b, "b");
        text(b, "").put((byte) 0);
        text(b, "ü");
        MessageDigest sha = MessageDigest.getInstance("SHA-256");
        sha.update(b.array(), 0, b.position());
        CanonicalForm form = CanonicalForm.builder("kind")
                .number("a", 1.5, "kN·m")
                .text("b", "ü")
                .build();
        assertThat(form.fingerprint().sha256()).isEqualTo(String.format("%064x", new BigInteger(1, sha.digest())));
        assertThat(form.fingerprint()).hasToString("1:" + form.fingerprint().sha256());
    }

    private static ByteBuffer text(ByteBuffer b, String text) {
        byte[] utf8 = text.getBytes(StandardCharsets.UTF_8);
        return b.putInt(utf8.length).put(utf8);
    }

    /** Stored fingerprints stay valid: those of version 1 do not change between releases, machines, and Java versions. */
    @Test
    void fingerprintsOfVersionOneStay() {
        LifelineDesign design = LifelineDesign.builder("Gallery")
                .line(line(1500, "post"))
                .worker(WORKER)
                .fall(FALL)
                .build();
        assertThat(line(1500, "post").fingerprint())
                .hasToString("1:d04a45a953716e43fe60bb2244b730504bd889b427f5fe4a9edf6c09fe7eec03");
        assertThat(FALL.fingerprint())
                .hasToString("1:c8664cd236c607d1714586a21e53ff80baa4cadd9f7cc1b5dd2347358359abd4");
        assertThat(design.fingerprint())
                .hasToString("1:a28f32b41dcc42b8fbc319bed4ba963220ae153e8ba5db0979872ab4db4685ae");
        assertThat(EnergyBalance.withDefaults().fingerprint())
                .hasToString("1:5c05c06182d41347237c4a612394e6e585b02b6c003e475ba639839881b4938c");
    }

    @Test
    void aCombinedFingerprintDependsOnEveryPartAndTheirOrder() {
        Lifeline line = line(1500);
        EnergyBalance loads = EnergyBalance.withDefaults();
        Fingerprint key = Fingerprint.combined(List.of(line, FALL, loads));
        assertThat(Fingerprint.combined(List.of(line(1500), FALL, EnergyBalance.withDefaults())))
                .isEqualTo(key);
        assertThat(Fingerprint.combined(List.of(FALL, line, loads))).isNotEqualTo(key);
        assertThat(Fingerprint.combined(List.of(line, FALL, loads.withSide(DeploymentForce.CLEARANCE))))
                .isNotEqualTo(key);
        assertThat(Fingerprint.combined(List.of(line, FALL, loads.withTemperature(15))))
                .isNotEqualTo(key);
        assertThatThrownBy(() -> Fingerprint.combined(List.of())).isInstanceOf(InvalidInputException.class);
    }

    @Test
    void differencesOfTwoDesignsSayWhatChangedAndByHowMuch() {
        LifelineDesign before = LifelineDesign.builder("Gallery")
                .line(line(1500, "post"))
                .worker(WORKER)
                .build();
        LifelineDesign after = LifelineDesign.builder("Gallery")
                .line(line(1800, "post"))
                .worker(WORKER.withMass(120))
                .workingFloor(9.5)
                .build();
        List<Difference> found = before.differences(after);
        assertThat(found)
                .extracting(Difference::toString)
                .containsExactly(
                        "line.installed.value: 1500.0 N → 1800.0 N (+300.0)",
                        "worker[A].mass: 100.0 kg → 120.0 kg (+20.0)",
                        "workingFloor: none → 9.5 m");
        assertThat(found.get(0).relativeChange().orElseThrow()).isEqualTo(0.2, within(1e-15));
        assertThat(found.get(0).isBeyond(0.1)).isTrue();
        assertThat(found.get(0).isBeyond(0.2)).isFalse();
        assertThat(found.get(2).isBeyond(1)).isTrue();
        assertThat(before.differences(before)).isEmpty();
    }

    /** A support put into the line is one difference of its own; the others stay what they were where nothing moved. */
    @Test
    void partsAreFoundByTheirIds() {
        List<Difference> found = line(1500, "a", "b").differences(line(1500, "a", "new", "b"));
        assertThat(found)
                .extracting(Difference::path)
                .contains("support[b].position.x", "support[south].position.x", "support[new].passage")
                .noneMatch(p -> p.startsWith("support[a]"));
        CanonicalForm one = CanonicalForm.builder("k").text("a", 1).text("b", 2).build();
        CanonicalForm other =
                CanonicalForm.builder("k").text("b", 2).text("a", 1).build();
        assertThat(Difference.between(one, other))
                .extracting(Difference::toString)
                .containsExactly("order: a, b → b, a");
        assertThat(one.fingerprint()).isNotEqualTo(other.fingerprint());
    }

    @Test
    void differencesOfTwoResults() {
        EnergyBalance balance = EnergyBalance.withDefaults();
        List<Difference> found = balance.solve(line(1500), FALL).differences(balance.solve(line(1800), FALL));
        assertThat(found)
                .anySatisfy(d -> {
                    assertThat(d.path()).isEqualTo("maximumTension");
                    assertThat(d.change().orElseThrow()).isPositive();
                })
                .noneMatch(d -> d.path().equals("temperature"));
        assertThat(balance.solve(line(1500), FALL).differences(balance.solve(line(1500), FALL)))
                .isEmpty();
    }

    @Test
    void aPathIsAddedOnce() {
        assertThatThrownBy(() -> CanonicalForm.builder("k").text("a", 1).text("a", 2))
                .isInstanceOf(IllegalStateException.class)
                .hasMessageContaining("a has been added before");
        assertThat(CanonicalForm.Builder.element("support", "a].b[\\")).isEqualTo("support[a\\].b\\[\\\\]");
    }
}
