using GreenLedger.Web.Tests;
using GreenLedger.Web.Tests.InBrowser;

[assembly: AssemblyFixture(typeof(Chromium))]
[assembly: AssemblyFixture(typeof(DemoLedger))]
[assembly: TestCollectionOrderer(typeof(LongestFirst))]
