package org.fallow.account.web;

import java.util.Map;

import com.google.zxing.BarcodeFormat;
import com.google.zxing.EncodeHintType;
import com.google.zxing.WriterException;
import com.google.zxing.common.BitMatrix;
import com.google.zxing.qrcode.QRCodeWriter;

/**
 * A QR code (ISO/IEC 18004) as the path of a drawing, one unit a module.
 *
 * @param size width and height in modules, with the quiet zone of four on each side
 * @param path the dark modules, as SVG path data
 */
public record QrCode(int size, String path) {

	private static final int QUIET_ZONE = 4;

	static QrCode of(String text) {
		try {
			BitMatrix bits = new QRCodeWriter().encode(text, BarcodeFormat.QR_CODE, 0, 0,
					Map.of(EncodeHintType.MARGIN, QUIET_ZONE));
			StringBuilder path = new StringBuilder();
			for (int y = 0; y < bits.getHeight(); y++) {
				for (int x = 0; x < bits.getWidth(); x++) {
					if (bits.get(x, y)) {
						path.append('M').append(x).append(' ').append(y).append("h1v1h-1z");
					}
				}
			}
			return new QrCode(bits.getWidth(), path.toString());
		}
		catch (WriterException ex) {
			throw new IllegalArgumentException("too long for a QR code", ex);
		}
	}

}
