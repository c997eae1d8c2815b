Console.WriteLine("placeholder");
