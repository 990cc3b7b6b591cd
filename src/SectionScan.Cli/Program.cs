using SectionScan.Cli;
return await SectionScanApp.RunAsync(args);
