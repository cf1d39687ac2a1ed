package org.fallow.platform;

import org.junit.jupiter.api.Test;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalStateException;

class MarkupTest {

	@Test
	void nestsElementsAndTexts() {
		Markup markup = new Markup(0).open("td", "role", "cell", "class", null).said("b", "x", "one").text(" ");
		assertThat(markup.said("i", "y", null).close().html())
			.isEqualTo("<td role=\"cell\"><b class=\"x\">one</b> </td>");
	}

	@Test
	void escapesTextsAndValues() {
		String bad = "</td><script>\"x\" & 'y'</script>";
		String escaped = "&lt;/td&gt;&lt;script&gt;&quot;x&quot; &amp; &#39;y&#39;&lt;/script&gt;";
		assertThat(new Markup(0).open("td", "data-label", bad).text(bad).said("b", bad, bad).close().html())
			.isEqualTo("<td data-label=\"" + escaped + "\">" + escaped + "<b class=\"" + escaped + "\">" + escaped
					+ "</b></td>");
	}

	@Test
	void keepsLettersOfAllLanguages() {
		assertThat(new Markup(0).text("Zoë – Jürgen −2 👟").html()).isEqualTo("Zoë – Jürgen −2 👟");
	}

	@Test
	void givesOutNothingUnfinished() {
		assertThatIllegalStateException().isThrownBy(() -> new Markup(0).open("td").html());
	}

}
