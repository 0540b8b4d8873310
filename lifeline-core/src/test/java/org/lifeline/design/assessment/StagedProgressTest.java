package org.lifeline.design.assessment;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.lifeline.base.ProgressListener;

/** Progress over several stages counts on, and what was stopped stays stopped; the words of a basis. */
class StagedProgressTest {
    private final List<String> heard = new ArrayList<>();

    private ProgressListener listener(long most) {
        return (done, total) -> {
            heard.add(done + "/" + total);
            return done < most;
        };
    }

    @Test
    void stagesCountOn() {
        StagedProgress progress = new StagedProgress(listener(100));
        progress.begin(3);
        assertThat(progress.done(1)).isTrue();
        assertThat(progress.done(3)).isTrue();
        progress.begin(2);
        assertThat(progress.done(1)).isTrue();
        assertThat(progress.done(2)).isTrue();
        assertThat(heard).containsExactly("1/3", "3/3", "4/5", "5/5");
        assertThat(progress.going()).isTrue();
    }

    @Test
    void aStageOfAnotherAnalysisTellsItsOwnTotal() {
        StagedProgress progress = new StagedProgress(listener(100));
        progress.begin(2);
        assertThat(progress.done(2)).isTrue();
        ProgressListener inner = progress.stage();
        assertThat(inner.progress(1, 4)).isTrue();
        assertThat(inner.progress(4, 4)).isTrue();
        progress.begin(1);
        assertThat(progress.done(1)).isTrue();
        assertThat(heard).containsExactly("2/2", "3/6", "6/6", "7/7");
    }

    @Test
    void whoStopsIsNotAskedAgain() {
        StagedProgress progress = new StagedProgress(listener(2));
        progress.begin(5);
        assertThat(progress.done(1)).isTrue();
        assertThat(progress.done(2)).isFalse();
        assertThat(progress.done(1)).isFalse();
        assertThat(progress.stage().progress(0, 9)).isFalse();
        assertThat(progress.going()).isFalse();
        assertThat(heard).containsExactly("1/5", "2/5");
    }

    @ParameterizedTest
    @EnumSource(Basis.class)
    void aBasisIsFoundByItsKey(Basis basis) {
        assertThat(Basis.of(basis.key())).contains(basis);
        assertThat(Basis.keys()).contains(basis.key());
        assertThat(basis.words()).isNotBlank();
        assertThat(Basis.of(basis.key().toUpperCase(java.util.Locale.ROOT))).isEmpty();
        assertThat(Basis.of("")).isEmpty();
    }

    @Test
    void wordsDiffer() {
        assertThat(Arrays.stream(Basis.values()).map(Basis::words)).doesNotHaveDuplicates();
        assertThat(Arrays.stream(MotionScope.values()).map(MotionScope::words)).doesNotHaveDuplicates();
    }
}
