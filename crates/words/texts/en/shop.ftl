### Shop

