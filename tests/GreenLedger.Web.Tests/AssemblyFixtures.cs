using GreenLedger.Web.Tests.InBrowser;

[assembly: AssemblyFixture(typeof(Chromium))]
