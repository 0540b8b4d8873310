package org.lifeline.base;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.ListResourceBundle;
import org.junit.jupiter.api.Test;
import org.lifeline.base.canonical.Fingerprint;
import org.lifeline.base.unit.Dimension;
import org.lifeline.base.unit.QuantityText;

/** Texts at the edges of what they may hold. */
@SuppressWarnings("NullAway") // Null is handed over to be refused, and what is there is taken as there.
class EdgesOfTextsTest {
    @Test
    void charactersOutsideTheBasicPlaneCountOnce() {
        String name = new String(Character.toChars(0x1F9D7)).repeat(161);
        assertThat(InertText.name(name)).endsWith("… (161 characters)");
    }

    @Test
    void anEntryOfABundleThatIsNoTextStaysEnglish() {
        ListResourceBundle numbers = new ListResourceBundle() {
            @Override
            protected Object[][] getContents() {
                return new Object[][] {{InputRule.NOT_FINITE.key(), 42}};
            }
        };
        assertThat(BundleTexts.of(numbers).sentence(InputRule.NOT_FINITE)).isEqualTo(InputRule.NOT_FINITE.english());
    }

    @Test
    void noPartsAreRefusedByName() {
        assertThatThrownBy(() -> Fingerprint.combined(null))
                .isInstanceOf(InvalidInputException.class)
                .hasMessageContaining("parts");
    }

    @Test
    void aNumberTooSmallForADoubleIsNoZero() {
        assertThatThrownBy(() -> QuantityText.read("length", "5e-400 m", Dimension.LENGTH))
                .isInstanceOf(InvalidInputException.class)
                .hasMessageContaining("too small");
        assertThat(QuantityText.read("length", "0e-400 m", Dimension.LENGTH)).isZero();
    }
}
