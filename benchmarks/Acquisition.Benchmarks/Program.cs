using BenchmarkDotNet.Running;

if (args is ["first-formula"])
    Acquisition.Benchmarks.FirstFormula.Measure();
else
    BenchmarkSwitcher.FromAssembly(typeof(Program).Assembly).Run(args);
