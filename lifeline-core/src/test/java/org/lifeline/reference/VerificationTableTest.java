package org.lifeline.reference;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Keeps the verification page of the manual current. */
class VerificationTableTest {
    private static final Path PAGE = Path.of("src", "docs", "theory", "verification.md");

    @Test
    void pageIsCurrent() throws IOException {
        List<ReferenceCheck> checks = ReferenceCases.checks();
        String page = VerificationTable.markdown(checks);
        if (Boolean.getBoolean("lifeline.writeDocs")) {
            Files.createDirectories(PAGE.getParent());
            Files.writeString(PAGE, page);
        }
        assertThat(PAGE)
                .as("the page in the repository; run this test with -Dlifeline.writeDocs=true to write it anew")
                .content()
                .isEqualTo(page);
        assertThat(checks).allMatch(ReferenceCheck::holds);
    }

    @Test
    void aWrongNumberIsSeen() {
        ReferenceCheck wrong = new ReferenceCheck("s", "t", "q", "m", "published", "2.00", 2.05, 0.01, "r");
        assertThat(wrong.holds()).isFalse();
        assertThat(VerificationTable.markdown(List.of(wrong)))
                .contains("+2.5e-02")
                .contains("0 within");
    }
}
