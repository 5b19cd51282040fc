"""A certificate that this machine gives itself, for the tests that speak TLS."""

import ssl
import subprocess
from pathlib import Path


def self_signed(folder: Path) -> tuple[Path, Path]:
    """The files of a certificate for localhost and of its key, made anew."""
    certificate, key = folder / "certificate.pem", folder / "key.pem"
    names = "subjectAltName=DNS:localhost,IP:127.0.0.1"
    command = "openssl req -x509 -newkey ec -pkeyopt ec_paramgen_curve:prime256v1 -nodes -days 2 -subj /CN=localhost"
    subprocess.run(
        [*command.split(), "-addext", names, "-keyout", key, "-out", certificate], check=True, capture_output=True
    )
    return certificate, key


def trusting(certificate: Path) -> ssl.SSLContext:
    """What a caller needs who trusts this certificate and no other; a cut connection is a fault to it."""
    context = ssl.create_default_context(cafile=str(certificate))
    context.minimum_version = ssl.TLSVersion.TLSv1_2
    return context
