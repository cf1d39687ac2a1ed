package org.fallow.platform.web;

import java.io.IOException;
import java.net.Socket;
import java.net.SocketException;
import java.nio.charset.StandardCharsets;

/** Sends what no client of a library would, byte by byte as it is given. */
final class RawSocket {

	private static final int PATIENCE_MILLIS = 60_000;

	private RawSocket() {
	}

	static String answer(int port, String request) throws IOException {
		try (Socket socket = new Socket("localhost", port)) {
			socket.setSoTimeout(PATIENCE_MILLIS);
			try {
				socket.getOutputStream().write(request.getBytes(StandardCharsets.ISO_8859_1));
			}
			catch (SocketException ex) {
				// the server said no before all was sent; its answer can still be read
			}
			return new String(socket.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
		}
	}

}
