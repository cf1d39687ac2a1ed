package org.fallow.account.web;

import java.time.Instant;

/**
 * A link that was just made, to be shown once.
 *
 * @param name whom it is for
 * @param link the whole address
 * @param qr the same as a QR code
 * @param expiresAt from when on it no longer works
 */
public record Invited(String name, String link, QrCode qr, Instant expiresAt) {
}
