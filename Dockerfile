# syntax=docker/dockerfile:1
FROM python:3.13-slim-bookworm AS build
WORKDIR /source
COPY service/requirements.lock service/requirements.lock
RUN python -m venv /opt/dividing \
    && /opt/dividing/bin/pip install --no-cache-dir --no-compile --only-binary :all: --require-hashes -r service/requirements.lock
COPY service/dividing /opt/dividing/app/service/dividing
COPY frontend /opt/dividing/app/frontend
COPY openapi /opt/dividing/app/openapi
# Compiled here, since the running container may not write.
RUN /opt/dividing/bin/python -m compileall -q /opt/dividing/lib /opt/dividing/app/service

FROM python:3.13-slim-bookworm
COPY --from=build /opt/dividing /opt/dividing
ENV PYTHONPATH=/opt/dividing/app/service PYTHONUNBUFFERED=1 PYTHONDONTWRITEBYTECODE=1
USER 65534:65534
EXPOSE 8080
HEALTHCHECK --interval=30s --timeout=3s --start-period=15s \
    CMD ["/opt/dividing/bin/python", "-c", "import urllib.request as r; r.urlopen('http://127.0.0.1:8080/health', timeout=2)"]
ENTRYPOINT ["/opt/dividing/bin/python", "-m", "dividing"]
CMD ["--bind", "0.0.0.0:8080"]
# docker run --read-only --cap-drop ALL --security-opt no-new-privileges -p 8080:8080 dividing
