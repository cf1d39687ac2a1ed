package org.fallow.browser;

import java.io.IOException;
import java.net.ServerSocket;

import org.fallow.platform.DatabaseTest;
import org.fallow.platform.SettableClock;
import org.fallow.team.Team;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;
import org.openqa.selenium.virtualauthenticator.HasVirtualAuthenticator;
import org.openqa.selenium.virtualauthenticator.VirtualAuthenticator;
import org.openqa.selenium.virtualauthenticator.VirtualAuthenticatorOptions;

import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.context.SpringBootTest.WebEnvironment;
import org.springframework.context.MessageSource;
import org.springframework.context.annotation.Import;
import org.springframework.test.context.DynamicPropertyRegistry;
import org.springframework.test.context.DynamicPropertySource;

import static org.assertj.core.api.Assertions.assertThat;

/**
 * One's own account in real browsers, at the address that passkeys are bound to.
 */
@DatabaseTest(webEnvironment = WebEnvironment.DEFINED_PORT)
@Import({ SettableClock.class, Runners.class })
class AccountBrowserTests {

	private static final int PORT = freePort();

	@RegisterExtension
	static final Browser PHONE = Browser.phone();

	@RegisterExtension
	static final Browser DESK = Browser.desk();

	@Autowired
	private Runners runners;

	@Autowired
	private MessageSource messages;

	private VirtualAuthenticator authenticator;

	private String name;

	@DynamicPropertySource
	static void address(DynamicPropertyRegistry registry) {
		registry.add("server.port", () -> PORT);
		registry.add("fallow.public-url", () -> "http://localhost:" + PORT);
	}

	private static int freePort() {
		try (ServerSocket socket = new ServerSocket(0)) {
			return socket.getLocalPort();
		}
		catch (IOException ex) {
			throw new IllegalStateException(ex);
		}
	}

	@BeforeEach
	void openAnAccount() {
		Team team = this.runners.team();
		this.name = this.runners.open(this.runners.athlete(team, "Ann Ashe", "Track").id());
		this.authenticator = ((HasVirtualAuthenticator) PHONE.driver()).addVirtualAuthenticator(
				new VirtualAuthenticatorOptions().setProtocol(VirtualAuthenticatorOptions.Protocol.CTAP2)
					.setTransport(VirtualAuthenticatorOptions.Transport.INTERNAL)
					.setHasResidentKey(true)
					.setHasUserVerification(true)
					.setIsUserVerified(true));
	}

	@AfterEach
	void takeTheAuthenticatorAway() {
		((HasVirtualAuthenticator) PHONE.driver()).removeVirtualAuthenticator(this.authenticator);
	}

	@Test
	void makesAPasskeyAndSignsInWithIt() {
		Visitor ann = signedIn(PHONE);
		addPasskey(ann, "My phone");
		assertThat(this.authenticator.getCredentials()).hasSize(1);
		ann.press("form.who button");
		String before = session(PHONE);
		ann.press("button[data-passkey='sign-in']");
		ann.waitsFor("/today");
		assertThat(session(PHONE)).isNotEqualTo(before);
		ann.go("/account");
		assertThat(ann.text()).contains("My phone", "Chrome");
	}

	@Test
	void staysSignedInByPasskey() {
		Visitor ann = signedIn(PHONE);
		addPasskey(ann, "My phone");
		ann.press("form.who button");
		ann.tick("stay", "on");
		ann.press("button[data-passkey='sign-in']");
		ann.waitsFor("/today");
		assertThat(PHONE.driver().manage().getCookieNamed("SESSION").getExpiry()).isNotNull();
	}

	@Test
	void opensNothingWithAPasskeyThatWasRemoved() {
		Visitor ann = signedIn(PHONE);
		addPasskey(ann, "My phone");
		ann.press("form[action='/account/passkeys/remove'] button");
		ann.sees("account.passkey.removed");
		ann.press("form.who button");
		PHONE.expectError("401");
		ann.find("button[data-passkey='sign-in']").click();
		ann.sees("sign-in.passkey.failed");
	}

	@Test
	void makesNoPasskeyWhereThePersonDoesNotAgree() {
		Visitor ann = signedIn(PHONE);
		this.authenticator.setUserVerified(false);
		ann.go("/account");
		ann.type("label", "My phone");
		ann.find("form[data-passkey='register'] button").click();
		ann.sees("account.passkey.failed");
		assertThat(this.authenticator.getCredentials()).isEmpty();
	}

	@Test
	void signsOutEverywhere() {
		Visitor onPhone = signedIn(PHONE);
		Visitor atDesk = signedIn(DESK);
		atDesk.go("/account");
		assertThat(atDesk.all("form[action='/account/sessions/end'] button")).hasSize(1);
		onPhone.go("/account");
		onPhone.press("button[data-end='all']");
		onPhone.sees("sign-in.signed-out-everywhere");
		atDesk.go("/today");
		assertThat(atDesk.path()).isEqualTo("/sign-in?expired");
	}

	private void addPasskey(Visitor visitor, String label) {
		visitor.go("/account");
		visitor.type("label", label);
		visitor.press("form[data-passkey='register'] button");
		visitor.waitsFor("/account");
		assertThat(visitor.text()).contains(label);
	}

	private static String session(Browser browser) {
		return browser.driver().manage().getCookieNamed("SESSION").getValue();
	}

	private Visitor signedIn(Browser browser) {
		Visitor visitor = new Visitor(browser, PORT, this.messages);
		visitor.signIn(this.name);
		return visitor;
	}

}
