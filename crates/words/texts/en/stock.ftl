### Stock

