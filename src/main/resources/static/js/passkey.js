/* Passkeys: signs in with one, and makes one. Without a browser that can, the page stays as it is. */
(function () {
	"use strict";

	const csrf = document.querySelector("meta[name='csrf']");
	if (!csrf || !window.PublicKeyCredential || !navigator.credentials) {
		return;
	}

	function bytes(text) {
		const plain = atob(text.replace(/-/g, "+").replace(/_/g, "/"));
		return Uint8Array.from(plain, (letter) => letter.charCodeAt(0));
	}

	function text(buffer) {
		const letters = Array.from(new Uint8Array(buffer), (byte) => String.fromCharCode(byte)).join("");
		return btoa(letters).replace(/\+/g, "-").replace(/\//g, "_").replace(/=+$/, "");
	}

	function described(list) {
		return (list || []).map((one) => Object.assign({}, one, { id: bytes(one.id) }));
	}

	async function post(address, body) {
		const headers = { "Accept": "application/json", "Content-Type": "application/json" };
		headers[csrf.dataset.header] = csrf.content;
		const answer = await fetch(address, { method: "POST", headers: headers, body: JSON.stringify(body) });
		if (!answer.ok) {
			throw new Error("refused");
		}
		return answer.json();
	}

	function common(credential, response) {
		return {
			id: credential.id,
			rawId: text(credential.rawId),
			type: credential.type,
			response: response,
			clientExtensionResults: credential.getClientExtensionResults(),
			authenticatorAttachment: credential.authenticatorAttachment
		};
	}

	async function signIn(button) {
		const options = await post(button.dataset.options, {});
		options.challenge = bytes(options.challenge);
		options.allowCredentials = described(options.allowCredentials);
		const credential = await navigator.credentials.get({ publicKey: options });
		const signed = common(credential, {
			authenticatorData: text(credential.response.authenticatorData),
			clientDataJSON: text(credential.response.clientDataJSON),
			signature: text(credential.response.signature),
			userHandle: credential.response.userHandle ? text(credential.response.userHandle) : undefined
		});
		const stay = document.getElementById("stay");
		const answer = await post(button.dataset.send + (stay && stay.checked ? "?stay=on" : ""), signed);
		window.location.assign(answer.redirectUrl);
	}

	async function register(form) {
		const options = await post(form.dataset.options, {});
		options.challenge = bytes(options.challenge);
		options.user.id = bytes(options.user.id);
		options.excludeCredentials = described(options.excludeCredentials);
		const credential = await navigator.credentials.create({ publicKey: options });
		const response = credential.response;
		await post(form.dataset.send, {
			label: form.elements.label.value.trim(),
			credential: common(credential, {
				attestationObject: text(response.attestationObject),
				clientDataJSON: text(response.clientDataJSON),
				transports: response.getTransports ? response.getTransports() : []
			})
		});
		window.location.assign(form.dataset.done);
	}

	function wire(selector, event, work) {
		const element = document.querySelector(selector);
		if (!element) {
			return;
		}
		const problem = document.querySelector("[data-passkey-problem]");
		element.hidden = false;
		element.addEventListener(event, async (happened) => {
			happened.preventDefault();
			problem.hidden = true;
			try {
				await work(element);
			}
			catch (failure) {
				problem.hidden = false;
			}
		});
	}

	wire("button[data-passkey='sign-in']", "click", signIn);
	wire("form[data-passkey='register']", "submit", register);
	const none = document.querySelector("[data-passkey='none']");
	if (none) {
		none.hidden = true;
	}
})();
