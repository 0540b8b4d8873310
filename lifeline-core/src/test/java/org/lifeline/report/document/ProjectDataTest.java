package org.lifeline.report.document;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.Arrays;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** The project block: every text is optional, and data once made stay as they are. */
class ProjectDataTest {
    @ParameterizedTest
    @EnumSource(ProjectData.Item.class)
    void aTextIsKeptUnderItsItem(ProjectData.Item item) {
        ProjectData data = ProjectData.none().with(item, "  a text ");
        assertThat(data.text(item)).isEqualTo("a text");
        assertThat(data.isEmpty()).isFalse();
        for (ProjectData.Item other : ProjectData.Item.values()) {
            if (other != item) {
                assertThat(data.text(other)).isEmpty();
            }
        }
        assertThat(ProjectData.none().text(item)).isEmpty();
        assertThat(item.key()).matches("[a-zA-Z]+");
        assertThat(item.label()).isNotBlank();
    }

    @Test
    void namesOfItemsDiffer() {
        assertThat(Arrays.stream(ProjectData.Item.values()).map(ProjectData.Item::key))
                .doesNotHaveDuplicates();
        assertThat(Arrays.stream(ProjectData.Item.values()).map(ProjectData.Item::label))
                .doesNotHaveDuplicates();
    }

    @Test
    void blankTextsAreNothing() {
        ProjectData blank = ProjectData.none().with(ProjectData.Item.CLIENT, " \t");
        assertThat(blank.isEmpty()).isTrue();
        assertThat(blank.text(ProjectData.Item.CLIENT)).isEmpty();
        assertThat(ProjectData.none().isEmpty()).isTrue();
    }

    @Test
    void aRevisionMoreLeavesTheOldDataAsTheyWere() {
        ProjectData.Revision a = new ProjectData.Revision("A", "1 March", "first issue", "engineer");
        ProjectData.Revision b = new ProjectData.Revision("B", "2 April", "posts moved", "engineer");
        ProjectData one = ProjectData.none().with(a);
        ProjectData two = one.with(b);
        assertThat(one.revisions()).containsExactly(a);
        assertThat(two.revisions()).containsExactly(a, b);
        assertThat(one.isEmpty()).isFalse();
        assertThat(ProjectData.none().revisions()).isEmpty();
        assertThatThrownBy(() -> two.revisions().clear()).isInstanceOf(UnsupportedOperationException.class);
    }

    @Test
    void aLaterTextReplacesTheEarlierOneInTheNewDataOnly() {
        ProjectData first = ProjectData.none().with(ProjectData.Item.NAME, "hall");
        ProjectData second = first.with(ProjectData.Item.NAME, "roof");
        assertThat(first.text(ProjectData.Item.NAME)).isEqualTo("hall");
        assertThat(second.text(ProjectData.Item.NAME)).isEqualTo("roof");
    }
}
