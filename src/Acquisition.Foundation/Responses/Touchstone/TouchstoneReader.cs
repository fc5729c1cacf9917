using System;
using System.Collections.Generic;
using System.Globalization;
using System.IO;
using System.Numerics;
using System.Threading;

namespace Acquisition.Core.Responses;

/// <summary>Reads one Touchstone text, line by line.</summary>
internal sealed class TouchstoneReader
{
    private static readonly char[] Blanks = { ' ', '\t', '\r' };

    private readonly List<double> _numbers = new();
    private readonly List<double> _hertz = new();
    private readonly List<Complex> _parameters = new();
    private string _version = "1.0";
    private double _unit = 1e9, _resistance = 50;
    private string _format = "MA";
    private bool _hasOptions, _keywords, _inData, _swapped = true, _information, _ended, _inNoise;
    private int _ports, _expected = -1, _line, _awaitedReferences;
    private string _matrix = "FULL";

    internal TouchstoneData Read(TextReader reader, CancellationToken cancellation)
    {
        for (string? line = reader.ReadLine(); line is not null && !_ended; line = reader.ReadLine())
        {
            cancellation.ThrowIfCancellationRequested();
            _line++;
            int comment = line.IndexOf('!');
            string text = (comment < 0 ? line : line.Substring(0, comment)).Trim();
            if (text.Length > 0)
                Take(text);
        }
        if (_numbers.Count > 0)
            throw Bad($"the data end within a record: {_numbers.Count} of {RecordLength} numbers");
        if (_hertz.Count == 0)
            throw Bad("there are no data");
        if (_expected >= 0 && _expected != _hertz.Count)
            throw Bad($"[Number of Frequencies] says {_expected}, found {_hertz.Count}");
        return new TouchstoneData(_ports, _resistance, _hertz.ToArray(), _parameters.ToArray(), _version);
    }

    private int RecordLength => 1 + 2 * (_matrix == "FULL" ? _ports * _ports : _ports * (_ports + 1) / 2);

    private void Take(string text)
    {
        if (text[0] == '[')
            Keyword(text);
        else if (_information || _inNoise)
            return;
        else if (text[0] == '#')
            Options(text);
        else if (_awaitedReferences > 0)
            References(Numbers(text));
        else
            Data(text);
    }

    /// <summary># unit parameter format R resistance, in any order and case; what is left out has its default.</summary>
    private void Options(string text)
    {
        if (_hasOptions)
            return; // The standard: further option lines are ignored.
        _hasOptions = true;
        string[] words = text.Substring(1).ToUpperInvariant().Split(Blanks, StringSplitOptions.RemoveEmptyEntries);
        for (int i = 0; i < words.Length; i++)
        {
            switch (words[i])
            {
                case "HZ": _unit = 1; break;
                case "KHZ": _unit = 1e3; break;
                case "MHZ": _unit = 1e6; break;
                case "GHZ": _unit = 1e9; break;
                case "S": break;
                case "Y" or "Z" or "G" or "H":
                    throw Bad($"the data are {words[i]} parameters; only S parameters are read");
                case "DB" or "MA" or "RI":
                    _format = words[i];
                    break;
                case "R":
                    if (++i == words.Length)
                        throw Bad("expected a resistance after R");
                    _resistance = Number(words[i]);
                    if (!(_resistance > 0))
                        throw Bad($"expected a resistance above 0 ohms after R, found {words[i]}");
                    break;
                default:
                    throw Bad($"found '{words[i]}' in the option line; expected a unit (Hz, kHz, MHz, GHz), S, a format (DB, MA, RI) or R with a resistance");
            }
        }
    }

    private void Keyword(string text)
    {
        int close = text.IndexOf(']');
        if (close < 0)
            throw Bad("expected ']' after a keyword");
        string keyword = text.Substring(1, close - 1).Trim().ToUpperInvariant(), rest = text.Substring(close + 1).Trim();
        if (_information && keyword != "END INFORMATION")
            return;
        _keywords = true;
        switch (keyword)
        {
            case "VERSION":
                _version = rest == "2.0" ? rest : throw Bad($"found version '{rest}'; version 2.0, or 1 without keywords, is read");
                break;
            case "NUMBER OF PORTS":
                _ports = Count(rest);
                if (_ports is < 1 or > 2)
                    throw Bad($"found {_ports} ports; one or two are read");
                break;
            case "TWO-PORT DATA ORDER":
                _swapped = rest switch
                {
                    "21_12" => true,
                    "12_21" => false,
                    _ => throw Bad($"found two-port data order '{rest}'; expected 12_21 or 21_12"),
                };
                break;
            case "NUMBER OF FREQUENCIES":
                _expected = Count(rest);
                break;
            case "NUMBER OF NOISE FREQUENCIES":
                break;
            case "REFERENCE":
                if (_ports == 0)
                    throw Bad("expected [Number of Ports] before [Reference]");
                _awaitedReferences = _ports;
                if (rest.Length > 0)
                    References(Numbers(rest));
                break;
            case "MATRIX FORMAT":
                _matrix = rest.ToUpperInvariant();
                if (_matrix is not ("FULL" or "LOWER" or "UPPER"))
                    throw Bad($"found matrix format '{rest}'; expected Full, Lower or Upper");
                break;
            case "BEGIN INFORMATION":
                _information = true;
                break;
            case "END INFORMATION":
                _information = false;
                break;
            case "NETWORK DATA":
                if (_ports == 0)
                    throw Bad("expected [Number of Ports] before [Network Data]");
                _inData = true;
                break;
            case "NOISE DATA":
                _inNoise = true;
                break;
            case "END":
                _ended = true;
                break;
            default:
                throw Bad($"found keyword [{text.Substring(1, close - 1)}], which is not read");
        }
    }

    private void References(List<double> values)
    {
        foreach (double value in values)
        {
            if (!(value > 0))
                throw Bad("expected reference resistances above 0 ohms");
            if (_awaitedReferences == _ports)
                _resistance = value;
            else if (value != _resistance)
                throw Bad("found different reference resistances at the ports; equal ones are read");
            if (_awaitedReferences-- == 0)
                throw Bad($"found more than {_ports} reference resistances");
        }
    }

    private void Data(string text)
    {
        if (!_hasOptions)
            throw Bad("expected an option line, such as '# GHz S MA R 50', before the data");
        if (_keywords && !_inData)
            throw Bad("expected [Network Data] before the data");
        List<double> numbers = Numbers(text);
        if (_ports == 0)
        {
            // Version 1 does not say how many ports there are, but a record of one or two ports is one line.
            _ports = numbers.Count switch
            {
                3 => 1,
                9 => 2,
                _ => throw Bad($"found {numbers.Count} numbers; expected 3 (one port) or 9 (two ports) in a line"),
            };
        }
        if (!_keywords)
        {
            if (_numbers.Count == 0 && _hertz.Count > 0 && _ports == 2 && numbers.Count == 5 && numbers[0] * _unit <= _hertz[_hertz.Count - 1])
            {
                // Version 1: noise parameters follow, told by a frequency that starts again.
                _inNoise = true;
                return;
            }
            if (numbers.Count != RecordLength)
                throw Bad($"found {numbers.Count} numbers; expected {RecordLength} for {_ports} port{(_ports == 1 ? "" : "s")}");
        }
        foreach (double number in numbers)
        {
            _numbers.Add(number);
            if (_numbers.Count == RecordLength)
                Record();
        }
    }

    private void Record()
    {
        double hertz = _numbers[0] * _unit;
        if (hertz < 0 || (_hertz.Count > 0 && hertz <= _hertz[_hertz.Count - 1]))
            throw Bad("frequencies must be at least 0 and rise");
        _hertz.Add(hertz);
        var values = new Complex[(RecordLength - 1) / 2];
        for (int i = 0; i < values.Length; i++)
            values[i] = Value(_numbers[1 + 2 * i], _numbers[2 + 2 * i]);
        _numbers.Clear();
        if (_ports == 1)
            _parameters.Add(values[0]);
        else if (_matrix != "FULL")
            _parameters.AddRange(new[] { values[0], values[1], values[1], values[2] });
        else if (_swapped)
            _parameters.AddRange(new[] { values[0], values[2], values[1], values[3] });
        else
            _parameters.AddRange(values);
    }

    private Complex Value(double first, double second) => _format switch
    {
        "RI" => new Complex(first, second),
        "MA" => Complex.FromPolarCoordinates(first, second * Math.PI / 180),
        _ => Complex.FromPolarCoordinates(Math.Pow(10, first / 20), second * Math.PI / 180),
    };

    private List<double> Numbers(string text)
    {
        var numbers = new List<double>();
        foreach (string word in text.Split(Blanks, StringSplitOptions.RemoveEmptyEntries))
            numbers.Add(Number(word));
        return numbers;
    }

    private double Number(string word) =>
        PortableNumber.TryParse(word, out double number) && Math.Abs(number) <= double.MaxValue
            ? number
            : throw Bad($"found '{word}', expected a number");

    private int Count(string word) =>
        int.TryParse(word, NumberStyles.None, CultureInfo.InvariantCulture, out int count) ? count : throw Bad($"found '{word}', expected a whole number");

    private TouchstoneFormatException Bad(string message) => new(_line, message);
}
