package org.fallow.account.web;

import java.io.IOException;
import java.io.InputStream;
import java.util.Objects;
import java.util.Optional;

import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import jakarta.servlet.http.HttpSession;
import org.fallow.account.Passkeys;
import org.fallow.account.SignedInPerson;
import org.fallow.wording.Message;
import org.jspecify.annotations.Nullable;
import tools.jackson.core.JacksonException;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.ObjectNode;

import org.springframework.http.HttpStatus;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.security.core.Authentication;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.security.web.webauthn.api.PublicKeyCredentialCreationOptions;
import org.springframework.security.web.webauthn.api.PublicKeyCredentialRequestOptions;
import org.springframework.security.web.webauthn.authentication.HttpSessionPublicKeyCredentialRequestOptionsRepository;
import org.springframework.security.web.webauthn.jackson.WebauthnJacksonModule;
import org.springframework.security.web.webauthn.management.RelyingPartyPublicKey;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;

/**
 * What passkey.js asks for and sends. The signature at sign-in goes to the security
 * filter instead.
 */
@Controller
class PasskeyController {

	/** No browser sends more about one passkey. */
	private static final int LONGEST_BODY = 64 * 1024;

	private static final String CHALLENGE = "fallow.passkey.challenge";

	private static final JsonMapper JSON = JsonMapper.builder().addModule(new WebauthnJacksonModule()).build();

	private final HttpSessionPublicKeyCredentialRequestOptionsRepository asked = new HttpSessionPublicKeyCredentialRequestOptionsRepository();

	private final Passkeys passkeys;

	PasskeyController(Passkeys passkeys) {
		this.passkeys = passkeys;
	}

	@PostMapping("/sign-in/passkey/options")
	ResponseEntity<String> signInOptions(HttpServletRequest request, HttpServletResponse response) {
		PublicKeyCredentialRequestOptions options = this.passkeys.request();
		this.asked.save(request, response, options);
		return json(JSON.writeValueAsString(options));
	}

	/** The session keeps the challenge alone; the name goes to the person's device. */
	@PostMapping("/account/passkeys/options")
	ResponseEntity<String> creationOptions(Authentication present, @AuthenticationPrincipal SignedInPerson person,
			HttpSession session) {
		PublicKeyCredentialCreationOptions options = this.passkeys.creation(present);
		session.setAttribute(CHALLENGE, options.getChallenge().toBase64UrlString());
		ObjectNode tree = JSON.valueToTree(options);
		((ObjectNode) tree.get("user")).put("name", person.name()).put("displayName", person.name());
		return json(JSON.writeValueAsString(tree));
	}

	@PostMapping("/account/passkeys")
	ResponseEntity<String> register(Authentication present, HttpServletRequest request, HttpSession session)
			throws IOException {
		Object challenge = session.getAttribute(CHALLENGE);
		session.removeAttribute(CHALLENGE);
		Optional<RelyingPartyPublicKey> made = read(request);
		boolean kept = challenge != null && made.isPresent()
				&& this.passkeys.register(present, challenge.toString(), made.get());
		return kept ? json("{}") : ResponseEntity.status(HttpStatus.BAD_REQUEST).build();
	}

	@PostMapping("/account/passkeys/remove")
	String remove(@AuthenticationPrincipal SignedInPerson person, @RequestParam(defaultValue = "") String id,
			RedirectAttributes redirect) {
		if (this.passkeys.remove(person.personId(), id)) {
			redirect.addFlashAttribute("notice", Message.of("account.passkey.removed"));
		}
		return "redirect:/account";
	}

	private static Optional<RelyingPartyPublicKey> read(HttpServletRequest request) throws IOException {
		byte[] body = body(request);
		try {
			JsonNode tree = JSON.readTree(body);
			if (body.length > LONGEST_BODY || !isLabel(tree.path("label").asString(null))) {
				return Optional.empty();
			}
			return Optional.ofNullable(JSON.treeToValue(tree, RelyingPartyPublicKey.class));
		}
		catch (JacksonException | IllegalArgumentException ex) {
			return Optional.empty();
		}
	}

	private static byte[] body(HttpServletRequest request) throws IOException {
		try (InputStream in = request.getInputStream()) {
			return in.readNBytes(LONGEST_BODY + 1);
		}
	}

	private static boolean isLabel(@Nullable String label) {
		return label != null && !label.isBlank() && label.length() <= Passkeys.LONGEST_LABEL
				&& label.chars().noneMatch(Character::isISOControl);
	}

	private static ResponseEntity<String> json(String text) {
		return ResponseEntity.ok().contentType(Objects.requireNonNull(MediaType.APPLICATION_JSON)).body(text);
	}

}
