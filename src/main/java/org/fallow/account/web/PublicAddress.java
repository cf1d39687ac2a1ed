package org.fallow.account.web;

import org.springframework.beans.factory.annotation.Value;
import org.springframework.stereotype.Component;

/**
 * The address people reach this Fallow at ({@code fallow.public-url}), for links that
 * leave the page.
 */
@Component
class PublicAddress {

	private final String address;

	PublicAddress(@Value("${fallow.public-url:http://localhost:8080}") String address) {
		this.address = address.replaceAll("/+$", "");
	}

	String link(String path) {
		return this.address + path;
	}

}
