return await StormClock.Service.Commands.CommandLine.RunAsync(args);
