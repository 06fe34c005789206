# Builds GreenLedger and runs it as a user that is not root, with its data in the volume /data.
#   docker build -t greenledger . && docker run -p 127.0.0.1:5080:8080 -v greenledger:/data greenledger
FROM node:20-bookworm-slim AS node

FROM mcr.microsoft.com/dotnet/sdk:10.0 AS build
COPY --from=node /usr/local /opt/node
ENV PATH="/opt/node/bin:$PATH" DOTNET_CLI_TELEMETRY_OPTOUT=1
WORKDIR /source
COPY . .
RUN dotnet restore src/GreenLedger.Web --locked-mode
RUN dotnet publish src/GreenLedger.Web --no-restore -c Release -o /app -p:UseAppHost=false

FROM mcr.microsoft.com/dotnet/aspnet:10.0
WORKDIR /app
COPY --from=build /app .
RUN install -d -o $APP_UID /data
ENV GreenLedger__Data=/data ASPNETCORE_HTTP_PORTS=8080
VOLUME /data
EXPOSE 8080
USER $APP_UID
HEALTHCHECK --interval=30s --timeout=5s --start-period=60s CMD bash -c 'exec 3<>/dev/tcp/127.0.0.1/8080 && printf "GET /health HTTP/1.0\r\nHost: localhost\r\n\r\n" >&3 && head -n 1 <&3 | grep -q " 200 "'
ENTRYPOINT ["dotnet", "GreenLedger.Web.dll"]
