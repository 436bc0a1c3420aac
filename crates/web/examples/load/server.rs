//! The server that is measured, and requests to it.

use crate::Failure;
use std::io::{BufRead, BufReader};
use std::process::{Child, Command, Stdio};
use tokio::io::{AsyncReadExt, AsyncWriteExt};
use tokio::net::TcpStream;

/// A server of its own process on the database, ended with this value.
pub struct Server {
    child: Child,
    /// Host and port.
    pub address: String,
}

impl Server {
    /// Starts it and waits for its greeting.
    pub fn start(binary: &str, url: &str) -> Result<Self, Failure> {
        let mut child = Command::new(binary)
            .args(["serve", "--json", "--listen", "127.0.0.1:0", "--database", url])
            .stdout(Stdio::piped())
            .spawn()
            .map_err(|e| format!("{binary}: {e}"))?;
        let out = child.stdout.take().ok_or("no output")?;
        let mut greeting = String::new();
        BufReader::new(out).read_line(&mut greeting)?;
        let told: serde_json::Value = serde_json::from_str(&greeting).map_err(|e| format!("“{greeting}”: {e}"))?;
        let address = told["address"].as_str().ok_or("no address")?.trim_start_matches("http://").to_owned();
        Ok(Self { child, address })
    }

    /// Memory that it holds now, MB.
    pub fn memory_mb(&self) -> Result<f64, Failure> {
        let status = std::fs::read_to_string(format!("/proc/{}/status", self.child.id()))?;
        let kb = status
            .lines()
            .find_map(|line| line.strip_prefix("VmRSS:")?.trim().strip_suffix(" kB")?.trim().parse().ok());
        Ok(kb.map(|kb: f64| kb / 1024.0).ok_or("no memory figure")?)
    }
}

impl Drop for Server {
    fn drop(&mut self) {
        let _ = self.child.kill();
        let _ = self.child.wait();
    }
}

/// Asks for a page and reads it to its end. A page that is not served is a failure.
pub async fn page(address: &str, path: &str) -> Result<usize, Failure> {
    let (status, answer) = ask(address, "GET", path, "").await?;
    if status != 200 {
        return Err(answer.chars().take(300).collect::<String>().into());
    }
    Ok(answer.len())
}

/// One request on a connection of its own, read to its end: status and whole answer.
pub async fn ask(address: &str, method: &str, path: &str, body: &str) -> Result<(u16, String), Failure> {
    let mut stream = TcpStream::connect(address).await?;
    stream.set_nodelay(true)?;
    let request = format!(
        "{method} {path} HTTP/1.1\r\nHost: {address}\r\nConnection: close\r\nContent-Type: application/json\r\n\
         Content-Length: {}\r\n\r\n{body}",
        body.len()
    );
    stream.write_all(request.as_bytes()).await?;
    let mut answer = Vec::with_capacity(64 * 1024);
    stream.read_to_end(&mut answer).await?;
    let answer = String::from_utf8_lossy(&answer).into_owned();
    let status = answer.get(9..12).and_then(|s| s.parse().ok()).ok_or("no status")?;
    Ok((status, answer))
}
